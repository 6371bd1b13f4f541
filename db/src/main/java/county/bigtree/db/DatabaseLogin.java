package county.bigtree.db;

import javax.sql.DataSource;

import org.postgresql.ds.PGSimpleDataSource;

/**
 * Where a database is and as whom to enter it. The password never shows in
 * {@link #toString()}.
 */
public record DatabaseLogin(String jdbcUrl, String user, String password) {

	/**
	 * Opens a connection of its own for each call; a pool is the caller's business.
	 */
	public DataSource dataSource() {
		PGSimpleDataSource dataSource = new PGSimpleDataSource();
		dataSource.setURL(this.jdbcUrl);
		dataSource.setUser(this.user);
		dataSource.setPassword(this.password);
		return dataSource;
	}

	@Override
	public String toString() {
		return this.user + " at " + this.jdbcUrl;
	}

}
