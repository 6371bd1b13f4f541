package county.bigtree.registry.command;

import java.util.OptionalLong;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.audit.VerifyRegister;
import org.springframework.stereotype.Service;

/**
 * {@code verify}: tells whether the register is whole, check by check.
 */
@Service
class Verify implements RegisterCommand {

	private static final int TOLD = 50;

	private final VerifyRegister verifyRegister;

	Verify(VerifyRegister verifyRegister) {
		this.verifyRegister = verifyRegister;
	}

	@Override
	public String word() {
		return "verify";
	}

	@Override
	public int run(Report report) {
		long wrong = this.verifyRegister.look(new Telling(report));
		if (wrong == 0) {
			report.line("The register is whole.");
			return WELL;
		}
		report.line("The register is not whole: %,d found wrong.", wrong);
		return NOT_WELL;
	}

	private static final class Telling implements VerifyRegister.Listener {

		private final Report report;

		private String what = "";

		private OptionalLong expected = OptionalLong.empty();

		Telling(Report report) {
			this.report = report;
		}

		@Override
		public int told() {
			return TOLD;
		}

		@Override
		public void begin(RegisterCheck check, OptionalLong expected) {
			this.what = check.subject().split(",", 2)[0];
			this.expected = expected;
			this.report.begin(this.what, expected);
		}

		@Override
		public void found(RegisterCheck check, String sentence) {
			this.report.line("  %s", sentence);
		}

		@Override
		public void looked(long count) {
			this.report.progress(this.what, count, this.expected);
		}

		@Override
		public void end(RegisterCheck check, Findings findings, long nanos) {
			if (findings.count() > TOLD) {
				this.report.line("  ... and %,d more", findings.count() - TOLD);
			}
			String mended = (findings.mended() > 0) ? ", %,d mended since".formatted(findings.mended()) : "";
			this.report.line("%,d %s: %,d wrong%s (%.1f s)", findings.lookedAt(), check.subject(), findings.count(),
					mended, nanos / 1e9);
		}

	}

}
