package county.bigtree.registry.database;

/**
 * Is done before the schema of a register is changed. What fails here keeps the schema,
 * and the service from starting.
 */
@FunctionalInterface
public interface BeforeMigration {

	/**
	 * Does it.
	 * @param version that the schema has
	 */
	void run(String version);

}
