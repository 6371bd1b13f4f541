package county.bigtree.db;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Sets up, as a superuser, what a register needs of a server before its migrations: an
 * owner of the schema, a role for the service, a database. What is there already stays as
 * it is.
 */
final class RegistryRoles {

	private final Connection connection;

	RegistryRoles(Connection connection) {
		this.connection = connection;
	}

	void createRole(String name, String password) throws SQLException {
		if (isThere("select 1 from pg_roles where rolname = ?", name)) {
			return;
		}
		execute("create role " + quoteName(name) + " login nosuperuser nocreatedb nocreaterole password "
				+ quoteText(password));
	}

	void createDatabase(String name, String owner, String service) throws SQLException {
		if (!isThere("select 1 from pg_database where datname = ?", name)) {
			execute("create database " + quoteName(name) + " owner " + quoteName(owner));
		}
		admitOnly(name, service);
	}

	/**
	 * Lets the service, besides the owner and superusers, into a database, and nobody
	 * else.
	 */
	void admitOnly(String database, String service) throws SQLException {
		execute("revoke all on database " + quoteName(database) + " from public");
		execute("grant connect, temporary on database " + quoteName(database) + " to " + quoteName(service));
	}

	void execute(String sql) throws SQLException {
		try (Statement statement = this.connection.createStatement()) {
			statement.execute(sql);
		}
	}

	String quoteName(String name) throws SQLException {
		try (Statement statement = this.connection.createStatement()) {
			return statement.enquoteIdentifier(name, true);
		}
	}

	private String quoteText(String text) throws SQLException {
		try (Statement statement = this.connection.createStatement()) {
			return statement.enquoteLiteral(text);
		}
	}

	private boolean isThere(String query, String name) throws SQLException {
		try (PreparedStatement statement = this.connection.prepareStatement(query)) {
			statement.setString(1, name);
			try (ResultSet answer = statement.executeQuery()) {
				return answer.next();
			}
		}
	}

}
