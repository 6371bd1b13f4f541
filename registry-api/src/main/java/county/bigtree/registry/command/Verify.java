package county.bigtree.registry.command;

import java.util.List;
import java.util.OptionalLong;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Looks whether the register is whole: every check, on one snapshot of the database.
 * Changes nothing.
 */
@Service
class Verify implements RegisterCommand {

	private static final int TOLD = 50;

	private final List<RegisterCheck> checks;

	private final JdbcClient jdbc;

	Verify(List<RegisterCheck> checks, JdbcClient jdbc) {
		this.checks = checks;
		this.jdbc = jdbc;
	}

	@Override
	public String word() {
		return "verify";
	}

	@Override
	@Transactional(isolation = Isolation.REPEATABLE_READ, readOnly = true)
	public int run(Report report) {
		prepareForLongQueries();
		long wrong = this.checks.stream().mapToLong((check) -> look(check, report)).sum();
		if (wrong == 0) {
			report.line("The register is whole.");
			return WELL;
		}
		report.line("The register is not whole: %,d found wrong.", wrong);
		return NOT_WELL;
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

	private static long look(RegisterCheck check, Report report) {
		long start = System.nanoTime();
		OptionalLong expected = check.expected();
		String what = check.subject().split(",", 2)[0];
		report.begin(what, expected);
		Findings findings = new Findings(TOLD, (sentence) -> report.line("  %s", sentence),
				(looked) -> report.progress(what, looked, expected));
		check.look(findings);
		if (findings.count() > TOLD) {
			report.line("  ... and %,d more", findings.count() - TOLD);
		}
		String mended = (findings.mended() > 0) ? ", %,d mended since".formatted(findings.mended()) : "";
		report.line("%,d %s: %,d wrong%s (%.1f s)", findings.lookedAt(), check.subject(), findings.count(), mended,
				(System.nanoTime() - start) / 1e9);
		return findings.count();
	}

}
