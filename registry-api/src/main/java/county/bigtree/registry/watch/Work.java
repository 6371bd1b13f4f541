package county.bigtree.registry.watch;

/**
 * The register's open work in all counties, at one moment.
 *
 * @param waiting what waits for a decision, letters aside
 * @param oldestSeconds how long the oldest of it has waited; 0 where nothing waits
 * @param due title holders and trees of the first ranks that are due to be measured again
 * @param stuckNotices mails that could not be sent for half an hour
 * @param archiveSeconds since an archive was last taken; not a number where none was
 * @param verifySeconds since the register was last found whole; likewise
 * @param trialSeconds since an archive was last restored on trial; likewise
 */
record Work(int waiting, double oldestSeconds, int due, int stuckNotices, double archiveSeconds, double verifySeconds,
		double trialSeconds) {
}
