package county.bigtree.registry.standing;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What was answered once is answered again: each witness kept is asked anew. Rests on the
 * scores, which {@link ScoreCheck} compares with the facts.
 */
@Component
@Order(8)
class WitnessCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private final JdbcClient jdbc;

	private final CanonicalStanding standing;

	private final RulesReader rulesReader;

	private final Mended mended;

	WitnessCheck(JdbcClient jdbc, CanonicalStanding standing, RulesReader rulesReader, Mended mended) {
		this.jdbc = jdbc;
		this.standing = standing;
		this.rulesReader = rulesReader;
		this.mended = mended;
	}

	@Override
	public String subject() {
		return "witnesses of past standings";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from witness").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		Map<String, Instant> mendedAt = this.mended.lastByCounty();
		Map<String, CountyRules> rules = new HashMap<>();
		try (Stream<Witness> witnesses = witnesses()) {
			witnesses.forEach((witness) -> {
				compare(witness, rules.computeIfAbsent(witness.book().county(), this.rulesReader::get), mendedAt,
						findings);
				findings.looked();
			});
		}
	}

	private void compare(Witness witness, CountyRules rules, Map<String, Instant> mendedAt, Findings findings) {
		CanonicalStanding.Answer again = this.standing.ask(witness.book(), witness.asOf(), witness.knownAt(), rules);
		if (again.trees() == witness.trees() && Arrays.equals(again.digest(), witness.digest())) {
			return;
		}
		String sentence = "Book %s/%s on %s as known at %s was answered otherwise on %s: %d trees were ranked, %d are now, and not all ranks, points or titles are the same"
			.formatted(witness.book().county(), witness.book().species(), witness.asOf(), witness.knownAt(),
					witness.keptOn(), witness.trees(), again.trees());
		if (Mended.since(witness.knownAt(), mendedAt, Stream.of(witness.book().county()))) {
			findings.addMended(sentence);
		}
		else {
			findings.add(sentence);
		}
	}

	private Stream<Witness> witnesses() {
		return this.jdbc.sql("select * from witness order by county, species, as_of, known_at")
			.withFetchSize(FETCH)
			.query((row, number) -> Witness.of(row))
			.stream();
	}

	/**
	 * An answer that was given.
	 */
	private record Witness(BookKey book, LocalDate asOf, Instant knownAt, LocalDate keptOn, int trees, byte[] digest) {

		static Witness of(ResultSet row) throws SQLException {
			return new Witness(new BookKey(row.getString("county"), row.getString("species")),
					row.getObject("as_of", LocalDate.class), SqlTime.get(row, "known_at"),
					row.getObject("kept_on", LocalDate.class), row.getInt("trees"), row.getBytes("digest"));
		}

	}

}
