package county.bigtree.registry.standby;

import java.sql.Connection;
import java.sql.SQLException;

import javax.sql.DataSource;

import org.springframework.jdbc.datasource.AbstractDataSource;

/**
 * The connections of read-only transactions: to a standby for those of a listed read, as
 * long as one is level, and to the primary for all others.
 */
class ReadRoute extends AbstractDataSource {

	private final DataSource primary;

	private final Standby standby;

	private final StandbyReads reads;

	ReadRoute(DataSource primary, Standby standby, StandbyReads reads) {
		this.primary = primary;
		this.standby = standby;
		this.reads = reads;
	}

	@Override
	public Connection getConnection() throws SQLException {
		if (this.reads.isUnderWay()) {
			Connection connection = this.standby.level(this.primary);
			if (connection != null) {
				this.reads.usesStandby();
				return connection;
			}
		}
		return readOnly(this.primary.getConnection());
	}

	@Override
	public Connection getConnection(String user, String password) throws SQLException {
		return readOnly(this.primary.getConnection(user, password));
	}

	/** The pool takes it back as it was. */
	private static Connection readOnly(Connection connection) throws SQLException {
		connection.setReadOnly(true);
		return connection;
	}

}
