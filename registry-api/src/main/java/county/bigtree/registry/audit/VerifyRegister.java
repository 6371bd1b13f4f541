package county.bigtree.registry.audit;

import java.util.List;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Looks whether the register is whole: every check, on one snapshot of the database.
 * Changes nothing, and may be done while others go on changing it.
 */
@Service
public class VerifyRegister {

	private final List<RegisterCheck> checks;

	private final JdbcClient jdbc;

	VerifyRegister(List<RegisterCheck> checks, JdbcClient jdbc) {
		this.checks = checks;
		this.jdbc = jdbc;
	}

	/**
	 * Looks at all of it.
	 * @return how much is wrong
	 */
	@Transactional(isolation = Isolation.REPEATABLE_READ, readOnly = true)
	public long look(Listener listener) {
		prepareForLongQueries();
		long wrong = 0;
		for (RegisterCheck check : this.checks) {
			long start = System.nanoTime();
			Findings findings = listener.begin(check);
			check.look(findings);
			listener.end(check, findings, System.nanoTime() - start);
			wrong += findings.count();
		}
		return wrong;
	}

	/**
	 * The checks sort and join whole tables, each once: there is memory for that, and
	 * compiling such a query takes longer than it saves.
	 */
	private void prepareForLongQueries() {
		this.jdbc.sql("select set_config('work_mem', '64MB', true), set_config('jit', 'off', true)")
			.query((row, number) -> row.getString(1))
			.single();
	}

	/**
	 * Hears how far it is.
	 */
	public interface Listener {

		/** What takes the findings of a check that begins. */
		Findings begin(RegisterCheck check);

		/** A check ended, after so many nanoseconds. */
		void end(RegisterCheck check, Findings findings, long nanos);

	}

}
