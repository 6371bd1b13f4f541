package county.bigtree.registry.database;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;

import javax.sql.rowset.CachedRowSet;
import javax.sql.rowset.RowSetMetaDataImpl;
import javax.sql.rowset.RowSetProvider;

import org.junit.jupiter.api.Test;

import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.SimplePropertyRowMapper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * The result sets are those of the JDK's {@code javax.sql.rowset}.
 */
class LabelledRowsTest {

	private final List<String> failed = new ArrayList<>();

	@Test
	void readsWhatTheOrdinaryMapperReadsAndTheDriverThrowsNothing() throws SQLException {
		assertThat(read(new SimplePropertyRowMapper<>(Credited.class))).containsExactly(new Credited("A. Finder", 3),
				new Credited("B. Judge", 4));
		assertThat(this.failed).contains("creditName");
		this.failed.clear();
		assertThat(read(new LabelledRows<>(Credited.class))).containsExactly(new Credited("A. Finder", 3),
				new Credited("B. Judge", 4));
		assertThat(this.failed).isEmpty();
	}

	@Test
	void refusesARecordWithAComponentOfNoColumn() {
		assertThatThrownBy(() -> read(new LabelledRows<>(Other.class))).isInstanceOf(SQLException.class);
	}

	private <T> List<T> read(RowMapper<T> mapper) throws SQLException {
		ResultSet rows = watched(rows());
		List<T> read = new ArrayList<>();
		while (rows.next()) {
			read.add(mapper.mapRow(rows, read.size()));
		}
		return read;
	}

	private ResultSet watched(ResultSet rows) {
		return (ResultSet) Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] { ResultSet.class },
				(proxy, method, arguments) -> {
					try {
						return method.invoke(rows, arguments);
					}
					catch (InvocationTargetException ex) {
						if (method.getName().equals("findColumn")) {
							this.failed.add((String) arguments[0]);
						}
						throw ex.getCause();
					}
				});
	}

	private static ResultSet rows() throws SQLException {
		CachedRowSet rows = RowSetProvider.newFactory().createCachedRowSet();
		RowSetMetaDataImpl labels = new RowSetMetaDataImpl();
		labels.setColumnCount(2);
		label(labels, 1, "trees", Types.INTEGER);
		label(labels, 2, "credit_name", Types.VARCHAR);
		rows.setMetaData(labels);
		add(rows, 4, "B. Judge");
		add(rows, 3, "A. Finder");
		rows.beforeFirst();
		return rows;
	}

	private static void label(RowSetMetaDataImpl labels, int column, String label, int type) throws SQLException {
		labels.setColumnName(column, label);
		labels.setColumnLabel(column, label);
		labels.setColumnType(column, type);
	}

	private static void add(CachedRowSet rows, int trees, String name) throws SQLException {
		rows.moveToInsertRow();
		rows.updateInt(1, trees);
		rows.updateString(2, name);
		rows.insertRow();
		rows.moveToCurrentRow();
	}

	record Credited(String creditName, int trees) {

	}

	record Other(String creditName, int shrubs) {

	}

}
