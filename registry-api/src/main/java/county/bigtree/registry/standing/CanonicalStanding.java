package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.rules.CountyRules;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * The whole standing of a book on a day as known at an instant, in one fixed form, of
 * which the digest is kept: one line per tree in ranking order, with its rank, id, points
 * and title ("-" for none), parted by tabs.
 */
@Component
class CanonicalStanding {

	private static final int BATCH = 1000;

	private final ScoresAsOf scores;

	CanonicalStanding(ScoresAsOf scores) {
		this.scores = scores;
	}

	/**
	 * Asks the score table, some trees at a time.
	 */
	Answer ask(BookKey book, LocalDate day, Instant knownAt, CountyRules rules) {
		AsOf asOf = new AsOf(day, knownAt, false);
		Lines lines = new Lines(this.scores.holders(book, asOf, rules.on(day, knownAt)));
		ScoredTree last = null;
		List<ScoredTree> batch;
		do {
			batch = this.scores.ranked(book, asOf, last, BATCH);
			batch.forEach(lines::add);
			last = batch.isEmpty() ? last : batch.get(batch.size() - 1);
		}
		while (batch.size() == BATCH);
		return lines.answer();
	}

	/**
	 * What was answered.
	 *
	 * @param trees how many trees are ranked
	 * @param digest SHA-256 of the lines
	 */
	record Answer(int trees, byte[] digest) {
	}

	/**
	 * The lines of an answer as far as they have been told.
	 */
	private static final class Lines {

		private final MessageDigest digest = sha256();

		private final Map<UUID, Title> holders;

		private int trees;

		private int rank;

		private @Nullable BigDecimal before;

		Lines(Map<UUID, Title> holders) {
			this.holders = holders;
		}

		void add(ScoredTree tree) {
			BigDecimal points = tree.score().points().toBigDecimal();
			this.trees++;
			if (!points.equals(this.before)) {
				this.rank = this.trees;
			}
			this.before = points;
			Title title = this.holders.get(tree.tree());
			String line = this.rank + "\t" + tree.tree() + "\t" + points.toPlainString() + "\t"
					+ ((title != null) ? title.word() : "-") + "\n";
			this.digest.update(line.getBytes(StandardCharsets.UTF_8));
		}

		Answer answer() {
			return new Answer(this.trees, this.digest.digest());
		}

		private static MessageDigest sha256() {
			try {
				return MessageDigest.getInstance("SHA-256");
			}
			catch (NoSuchAlgorithmException ex) {
				throw new IllegalStateException("Every Java platform has SHA-256", ex);
			}
		}

	}

}
