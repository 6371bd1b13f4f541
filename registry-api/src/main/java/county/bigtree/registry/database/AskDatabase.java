package county.bigtree.registry.database;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;

import org.springframework.beans.BeanUtils;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;

/**
 * The client by which all asks the database. Rows become records by {@link LabelledRows}.
 */
@Configuration(proxyBeanMethods = false)
class AskDatabase {

	@Bean
	JdbcClient jdbcClient(NamedParameterJdbcOperations jdbc) {
		JdbcClient client = JdbcClient.create(jdbc);
		return (sql) -> labelled(client.sql(sql));
	}

	private static StatementSpec labelled(StatementSpec statement) {
		return (StatementSpec) Proxy.newProxyInstance(AskDatabase.class.getClassLoader(),
				new Class<?>[] { StatementSpec.class }, (proxy, method, arguments) -> {
					if (method.getName().equals("query") && arguments != null && arguments[0] instanceof Class<?> type
							&& !BeanUtils.isSimpleProperty(type)) {
						return statement.query(new LabelledRows<>(type));
					}
					try {
						Object answer = method.invoke(statement, arguments);
						return (answer == statement) ? proxy : answer;
					}
					catch (InvocationTargetException ex) {
						throw ex.getCause();
					}
				});
	}

}
