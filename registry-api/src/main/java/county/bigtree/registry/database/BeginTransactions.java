package county.bigtree.registry.database;

import java.sql.SQLException;
import java.sql.Statement;

import jakarta.persistence.EntityManager;
import org.hibernate.Session;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.orm.jpa.JpaVendorAdapter;
import org.springframework.orm.jpa.vendor.HibernateJpaDialect;
import org.springframework.orm.jpa.vendor.HibernateJpaVendorAdapter;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.DelegatingTransactionDefinition;
import org.springframework.transaction.support.ResourceTransactionDefinition;

/**
 * How transactions begin. A level of isolation is named in the transaction, together with
 * its begin: named for the connection before it, and set back after it, it would take two
 * more trips to the database.
 */
@Configuration(proxyBeanMethods = false)
class BeginTransactions {

	@Bean
	static JpaVendorAdapter jpaVendorAdapter() {
		HibernateJpaDialect dialect = new Dialect();
		return new HibernateJpaVendorAdapter() {

			@Override
			public HibernateJpaDialect getJpaDialect() {
				return dialect;
			}

		};
	}

	private static final class Dialect extends HibernateJpaDialect {

		@Override
		public Object beginTransaction(EntityManager entityManager, TransactionDefinition definition)
				throws SQLException {
			if (definition.getIsolationLevel() != TransactionDefinition.ISOLATION_REPEATABLE_READ) {
				return super.beginTransaction(entityManager, definition);
			}
			Object begun = super.beginTransaction(entityManager, new WithoutIsolation(definition));
			entityManager.unwrap(Session.class).doWork((connection) -> {
				try (Statement statement = connection.createStatement()) {
					statement.execute("set transaction isolation level repeatable read");
				}
			});
			return begun;
		}

	}

	private static final class WithoutIsolation extends DelegatingTransactionDefinition
			implements ResourceTransactionDefinition {

		private final boolean local;

		WithoutIsolation(TransactionDefinition definition) {
			super(definition);
			this.local = definition instanceof ResourceTransactionDefinition resource && resource.isLocalResource();
		}

		@Override
		public int getIsolationLevel() {
			return ISOLATION_DEFAULT;
		}

		@Override
		public boolean isLocalResource() {
			return this.local;
		}

	}

}
