package county.bigtree.registry.command;

/**
 * A job done once on the register, with an exit code, while nothing is served.
 */
interface RegisterCommand {

	/** All is well. */
	int WELL = 0;

	/** The job was done and found something that is not as it should be. */
	int NOT_WELL = 1;

	/** The job could not be done. */
	int FAILED = 2;

	/**
	 * The word by which it is called.
	 */
	String word();

	/**
	 * Does the job.
	 * @return the exit code
	 */
	int run(Report report);

}
