package county.bigtree.registry.archive;

import javax.sql.DataSource;

/**
 * Archives of databases that no service works on.
 */
public final class TestArchives {

	private TestArchives() {
	}

	public static ArchiveRegister of(DataSource database) {
		return new ArchiveRegister(database);
	}

}
