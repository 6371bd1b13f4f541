package county.bigtree.registry.standing;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;

import county.bigtree.registry.journal.SqlTime;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Which species became part of which, and when that became known.
 */
final class Folds {

	private final Map<String, Fold> folds;

	private Folds(Map<String, Fold> folds) {
		this.folds = folds;
	}

	static Folds read(JdbcClient jdbc) {
		Map<String, Fold> folds = new HashMap<>();
		jdbc.sql("select species, into_species, recorded_at from species_fold").query((row) -> {
			folds.put(row.getString("species"),
					new Fold(row.getString("into_species"), SqlTime.get(row, "recorded_at")));
		});
		return new Folds(folds);
	}

	Stream<Instant> instants() {
		return this.folds.values().stream().map(Fold::recordedAt);
	}

	/**
	 * Under which species the trees of one are ranked, as known at the instant.
	 */
	String rankedAs(String species, Instant known) {
		Fold fold = this.folds.get(species);
		return (fold == null || fold.recordedAt().isAfter(known)) ? species : rankedAs(fold.into(), known);
	}

	private record Fold(String into, Instant recordedAt) {
	}

}
