package county.bigtree.registry.database;

import java.nio.file.Path;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Where a register without a database server of its owner's keeps its data.
 *
 * @param dataFolder created if it is not there
 * @param databasePort on the loopback address; 0 for any free one
 * @param databaseAsWritten whether the database may be one of an earlier major version of
 * PostgreSQL, which is archived and not served
 */
@ConfigurationProperties("registry")
record RegisterStorage(@DefaultValue("./registry-data") Path dataFolder, @DefaultValue("0") int databasePort,
		@DefaultValue("false") boolean databaseAsWritten) {

	private static final int LARGEST_PORT = 65_535;

	RegisterStorage {
		if (databasePort < 0 || databasePort > LARGEST_PORT) {
			throw new IllegalArgumentException(
					"registry.database-port must be from 0 to " + LARGEST_PORT + ", not " + databasePort);
		}
	}

}
