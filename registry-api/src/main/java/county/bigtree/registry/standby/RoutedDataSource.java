package county.bigtree.registry.standby;

import java.sql.Connection;
import java.sql.SQLException;

import javax.sql.DataSource;

import org.springframework.jdbc.datasource.LazyConnectionDataSourceProxy;

/**
 * Takes a connection when the first statement is sent, when it is known whether the
 * transaction only reads. For whoever looks behind it, it is the primary's pool.
 */
class RoutedDataSource extends LazyConnectionDataSourceProxy {

	private final DataSource primary;

	RoutedDataSource(DataSource primary, DataSource reads) {
		this.primary = primary;
		setDefaultAutoCommit(true);
		setDefaultTransactionIsolation(Connection.TRANSACTION_READ_COMMITTED);
		setTargetDataSource(primary);
		setReadOnlyDataSource(reads);
	}

	@Override
	public <T> T unwrap(Class<T> type) throws SQLException {
		return type.isInstance(this.primary) ? type.cast(this.primary) : super.unwrap(type);
	}

	@Override
	public boolean isWrapperFor(Class<?> type) throws SQLException {
		return type.isInstance(this.primary) || super.isWrapperFor(type);
	}

}
