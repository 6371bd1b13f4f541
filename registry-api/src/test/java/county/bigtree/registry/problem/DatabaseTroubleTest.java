package county.bigtree.registry.problem;

import java.sql.SQLException;

import org.junit.jupiter.api.Test;

import org.springframework.transaction.TransactionSystemException;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * States by the PostgreSQL manual, appendix A.
 */
class DatabaseTroubleTest {

	@Test
	void knowsAServerThatWentAway() {
		for (String state : new String[] { "08006", "08001", "57P01", "57P03", "25006", "53100" }) {
			assertThat(DatabaseTrouble.caused(deep(new SQLException("gone", state)))).as(state).isTrue();
		}
		assertThat(DatabaseTrouble.caused(deep(new SQLException("Connection is closed")))).isTrue();
	}

	@Test
	void leavesOtherFailuresAlone() {
		assertThat(DatabaseTrouble.caused(deep(new SQLException("duplicate key", "23505")))).isFalse();
		assertThat(DatabaseTrouble.caused(deep(new SQLException("deadlock", "40P01")))).isFalse();
		assertThat(DatabaseTrouble.caused(new IllegalStateException("none"))).isFalse();
	}

	private static Exception deep(SQLException cause) {
		return new TransactionSystemException("Unable to rollback", new IllegalStateException(cause));
	}

}
