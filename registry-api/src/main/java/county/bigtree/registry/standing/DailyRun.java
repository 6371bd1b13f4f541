package county.bigtree.registry.standing;

import java.time.LocalDate;
import java.time.ZoneOffset;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SealJournal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Service;

/**
 * What is done once a day: lets time do what is due in every county, keeps witnesses, and
 * seals the journal. Every node begins it; of two that do, one keeps a county's witnesses
 * and the other passes it over. A county that fails does not keep the others from theirs.
 */
@Service
class DailyRun {

	private static final Logger logger = LoggerFactory.getLogger(DailyRun.class);

	private final CatchUp catchUp;

	private final KeepWitnesses witnesses;

	private final SealJournal seals;

	private final RegisterClock clock;

	DailyRun(CatchUp catchUp, KeepWitnesses witnesses, SealJournal seals, RegisterClock clock) {
		this.seals = seals;
		this.catchUp = catchUp;
		this.witnesses = witnesses;
		this.clock = clock;
	}

	/**
	 * Runs for all counties, on the day of the register's clock.
	 */
	@Scheduled(cron = "0 43 2 * * *", zone = "UTC")
	void run() {
		LocalDate day = LocalDate.ofInstant(this.clock.now(), ZoneOffset.UTC);
		for (String county : this.witnesses.counties()) {
			try {
				this.catchUp.county(county);
				int kept = this.witnesses.keep(county, day);
				logger.info("County {}: {} witnesses kept", county, kept);
			}
			catch (DataAccessException ex) {
				logger.error("The daily run failed in county {}", county, ex);
			}
		}
		seal();
	}

	private void seal() {
		try {
			logger.info(this.seals.seal() ? "The journal is sealed" : "The journal was sealed already");
		}
		catch (DataAccessException ex) {
			logger.error("The journal could not be sealed", ex);
		}
	}

}
