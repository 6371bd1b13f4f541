package county.bigtree.registry.journal;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Seals the journal: once a day, the heads of all counties together.
 */
@Service
public class SealJournal {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	SealJournal(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Seals the journal as it is now, unless it has been sealed today (in UTC) or another
	 * node is sealing it.
	 * @return whether it was sealed
	 */
	@Transactional(isolation = Isolation.READ_COMMITTED)
	public boolean seal() {
		if (!takesTurn()) {
			return false;
		}
		Instant now = this.clock.now();
		LocalDate day = LocalDate.ofInstant(now, ZoneOffset.UTC);
		Optional<Seal> last = last();
		if (last.isPresent() && !last.get().day().isBefore(day)) {
			return false;
		}
		keep(Seal.of(last.map(Seal::number).orElse(0L) + 1, day, now, heads(), last.map(Seal::hash).orElse(Seal.NONE)));
		return true;
	}

	private boolean takesTurn() {
		return this.jdbc.sql("select pg_try_advisory_xact_lock(hashtextextended('seal', 0))")
			.query(Boolean.class)
			.single();
	}

	private Optional<Seal> last() {
		return this.jdbc.sql("select * from seal order by number desc limit 1").query(Seal::read).optional();
	}

	/** One statement, so that all are of one instant. */
	private List<Seal.Head> heads() {
		return this.jdbc.sql("select county, seq, encode(chain, 'hex') as hash from county_head where seq > 0")
			.query((row, number) -> new Seal.Head(row.getString("county"), row.getLong("seq"), row.getString("hash")))
			.list();
	}

	private void keep(Seal seal) {
		this.jdbc.sql("insert into seal (number, day, sealed_at, body, hash) values (?, ?, ?, ?, ?)")
			.params(seal.number(), seal.day(), SqlTime.of(seal.sealedAt()), seal.body(), seal.hash())
			.update();
	}

}
