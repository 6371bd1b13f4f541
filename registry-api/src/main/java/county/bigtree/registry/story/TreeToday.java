package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.LocalDate;

import county.bigtree.domain.quantity.KnownDay;
import org.jspecify.annotations.Nullable;

/**
 * How a tree stands today. Days are those of the county where it stands.
 *
 * @param species the common name of what it is ranked as
 * @param county the county's name
 * @param condition the latest confirmed, if any
 * @param points its present score, if it is ranked
 * @param measured the measuring day as exactly as it is known
 * @param lostOn the day on which it lost a part since it was measured, if it did
 * @param title what it holds, if anything
 * @param since the day on which that was recognised
 * @param pastTitle what it held last, if it holds nothing
 */
record TreeToday(String tag, String species, String county, boolean accepted, boolean eligible, boolean takenOff,
		boolean genusOnly, @Nullable String condition, @Nullable LocalDate observedOn, @Nullable BigDecimal points,
		@Nullable String measured, boolean carriedOver, @Nullable LocalDate lostOn, int rank, @Nullable String title,
		@Nullable LocalDate since, @Nullable String pastTitle, @Nullable LocalDate pastFrom,
		@Nullable LocalDate pastTo) {

	/**
	 * The sentence that says it.
	 */
	String sentence() {
		String who = "%s, %s in %s,".formatted(this.tag, Words.a(this.species), this.county);
		if (this.points == null || this.measured == null) {
			return "%s %s%s.".formatted(who, whyUnranked(), past());
		}
		String figures = figures(this.points, this.measured, this.carriedOver, this.lostOn);
		return (this.title != null && this.since != null)
				? "%s has been %s since %s with %s.".formatted(who, this.title, Words.day(this.since), figures)
				: "%s ranks %s with %s%s.".formatted(who, Words.ordinal(this.rank), figures, past());
	}

	/**
	 * Points with what they rest on.
	 */
	static String figures(BigDecimal points, String measured, boolean carriedOver, @Nullable LocalDate lostOn) {
		return "%s points, %s %s%s".formatted(Words.points(points),
				carriedOver ? "carried over from an older record and measured" : "measured",
				Words.on(KnownDay.parse(measured)), (lostOn != null) ? " before it lost a part" : "");
	}

	private String past() {
		return (this.pastTitle != null && this.pastFrom != null && this.pastTo != null) ? "; it was %s from %s to %s"
			.formatted(this.pastTitle, Words.day(this.pastFrom), Words.day(this.pastTo)) : "";
	}

	private String whyUnranked() {
		if (this.takenOff) {
			return "was taken off the books";
		}
		if (!this.accepted) {
			return "has been nominated and is not on the books yet";
		}
		if (!this.eligible) {
			return "is not eligible and not ranked";
		}
		if (this.genusOnly) {
			return "is known to its genus only and not ranked";
		}
		return switch (String.valueOf(this.condition)) {
			case "fallen" -> "has fallen" + seen();
			case "dead" -> "is dead" + seen();
			case "removed" -> "has been removed" + seen();
			default -> "has no measurement that counts and is not ranked";
		};
	}

	private String seen() {
		return (this.observedOn != null) ? ", as was seen on " + Words.day(this.observedOn) : "";
	}

}
