package county.bigtree.registry.signoff;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import county.bigtree.domain.review.Verdict;
import county.bigtree.registry.measurement.KeptFigure;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The agreement that a sign-off keeps, beside the figures that were on record then.
 *
 * @param figures girth, height and crown spread, each filed and checked; null where not
 * measured
 */
record AgreementOnRecord(List<KeptFigure> kept, @Nullable BigDecimal[] figures) {

	private static final List<String> KINDS = List.of("girth", "height", "crown");

	static AgreementOnRecord read(JsonMapper json, String kept, @Nullable String figures) {
		return new AgreementOnRecord(KeptFigure.read(json, kept),
				json.readTree(Objects.requireNonNullElse(figures, "[null, null, null, null, null, null]"))
					.values()
					.stream()
					.map(AgreementOnRecord::figure)
					.toArray(BigDecimal[]::new));
	}

	/**
	 * Bodies of requests may hold no null in a list, but a figure may be lacking here.
	 */
	private static @Nullable BigDecimal figure(JsonNode node) {
		return node.isNull() ? null : node.decimalValue();
	}

	/** What is wrong with it, for a sign-off of this verdict. */
	List<String> wrong(String verdict) {
		List<String> wrong = new ArrayList<>();
		if (!isOfTheFigures()) {
			wrong.add(" was judged by other figures than were on record");
		}
		for (KeptFigure figure : this.kept) {
			if (!figure.judged().verdict().code().equals(figure.verdict())) {
				wrong.add(
						" says %s of the %s, but its numbers say otherwise".formatted(figure.verdict(), figure.kind()));
			}
			if (verdict.equals(Verdict.CONFIRMED.code()) && !figure.judged().withinTolerance()) {
				wrong.add(" confirms a %s beyond its tolerance".formatted(figure.kind()));
			}
		}
		return wrong;
	}

	private boolean isOfTheFigures() {
		List<String> expected = new ArrayList<>();
		for (int kind = 0; kind < KINDS.size(); kind++) {
			BigDecimal filed = this.figures[2 * kind];
			BigDecimal checked = this.figures[2 * kind + 1];
			if (filed != null && checked != null) {
				expected.add(KINDS.get(kind) + plain(filed) + "/" + plain(checked));
			}
		}
		return expected.equals(this.kept.stream()
			.map((figure) -> figure.kind() + plain(figure.filed()) + "/" + plain(figure.checked()))
			.toList());
	}

	private static String plain(BigDecimal figure) {
		return figure.stripTrailingZeros().toPlainString();
	}

}
