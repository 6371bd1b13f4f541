package county.bigtree.registry.database;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.SimplePropertyRowMapper;
import org.springframework.jdbc.support.JdbcUtils;

/**
 * Makes records of rows as {@link SimplePropertyRowMapper} does. That one asks for a
 * column by the name of the record's component first, {@code creditName}, and by
 * {@code credit_name} only once the driver has thrown: an exception with the stack of a
 * whole request for each such component of each row. Here both names are known from the
 * labels of the result. One for each query.
 */
class LabelledRows<T> implements RowMapper<T> {

	private static final Map<Class<?>, RowMapper<?>> MAPPERS = new ConcurrentHashMap<>();

	private final RowMapper<T> mapper;

	private @Nullable ResultSet rows;

	private @Nullable ResultSet labelled;

	@SuppressWarnings("unchecked")
	LabelledRows(Class<T> type) {
		this.mapper = (RowMapper<T>) MAPPERS.computeIfAbsent(type, SimplePropertyRowMapper::new);
	}

	@Override
	public T mapRow(ResultSet row, int number) throws SQLException {
		if (this.rows != row || this.labelled == null) {
			this.rows = row;
			this.labelled = labelled(row);
		}
		return this.mapper.mapRow(this.labelled, number);
	}

	private static ResultSet labelled(ResultSet rows) throws SQLException {
		Map<String, Integer> columns = new HashMap<>();
		ResultSetMetaData labels = rows.getMetaData();
		for (int column = labels.getColumnCount(); column > 0; column--) {
			String label = labels.getColumnLabel(column);
			columns.put(JdbcUtils.convertUnderscoreNameToPropertyName(label), column);
			columns.put(label, column);
		}
		return (ResultSet) Proxy.newProxyInstance(LabelledRows.class.getClassLoader(),
				new Class<?>[] { ResultSet.class }, (proxy, method, arguments) -> {
					if (method.getName().equals("findColumn") && columns.containsKey(arguments[0])) {
						return columns.get(arguments[0]);
					}
					try {
						return method.invoke(rows, arguments);
					}
					catch (InvocationTargetException ex) {
						throw ex.getCause();
					}
				});
	}

}
