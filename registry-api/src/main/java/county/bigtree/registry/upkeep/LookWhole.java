package county.bigtree.registry.upkeep;

import java.time.LocalDate;
import java.util.OptionalLong;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.audit.VerifyRegister;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.stereotype.Service;

/**
 * Looks each day whether the register is whole, on one node. What is wrong stands in the
 * log.
 */
@Service
class LookWhole {

	private static final Logger logger = LoggerFactory.getLogger(LookWhole.class);

	/** Of each check. */
	private static final int TOLD = 20;

	private final VerifyRegister verifyRegister;

	private final UpkeepSettings settings;

	private final Recording recording;

	LookWhole(VerifyRegister verifyRegister, UpkeepSettings settings, Recording recording) {
		this.verifyRegister = verifyRegister;
		this.settings = settings;
		this.recording = recording;
	}

	/** Looks, if nobody did yet. */
	void run(LocalDate day) {
		if (this.settings.verify()) {
			this.recording.run(UpkeepRun.VERIFY, day, TroubleKind.VERIFY_FAILED, (began) -> look());
		}
	}

	private Recording.Ended look() {
		Looking looking = new Looking();
		long wrong = this.verifyRegister.look(looking);
		if (wrong == 0) {
			this.recording.mended(TroubleKind.NOT_WHOLE);
			return Recording.Ended.well("%,d looked at, none wrong".formatted(looking.looked), null);
		}
		String detail = "%,d of %,d looked at wrong".formatted(wrong, looking.looked);
		this.recording.found(TroubleKind.NOT_WHOLE, detail);
		return Recording.Ended.notWell(detail);
	}

	private static final class Looking implements VerifyRegister.Listener {

		private long looked;

		@Override
		public int told() {
			return TOLD;
		}

		@Override
		public void begin(RegisterCheck check, OptionalLong expected) {
			// Nobody watches it.
		}

		@Override
		public void found(RegisterCheck check, String sentence) {
			logger.error("{}: {}", check.subject(), sentence);
		}

		@Override
		public void looked(long count) {
			// Nobody watches it.
		}

		@Override
		public void end(RegisterCheck check, Findings findings, long nanos) {
			this.looked += findings.lookedAt();
		}

	}

}
