package county.bigtree.registry.health;

/**
 * What the service needs before it can answer.
 *
 * @param migrationsDone whether the schema has every migration of this release
 */
public record Readiness(boolean databaseReachable, boolean migrationsDone) {

	public boolean isReady() {
		return this.databaseReachable && this.migrationsDone;
	}

}
