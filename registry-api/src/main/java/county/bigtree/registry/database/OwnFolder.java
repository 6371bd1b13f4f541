package county.bigtree.registry.database;

import java.nio.file.Path;

/**
 * The folder in which a register with a PostgreSQL of its own keeps its data.
 */
public record OwnFolder(Path path) {
}
