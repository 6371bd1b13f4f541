package county.bigtree.registry.story;

import java.util.Objects;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.rulebook.Rulebook;
import org.jspecify.annotations.Nullable;

/**
 * Says a fact in one sentence. Reasons in people's own words are never part of it.
 */
final class FactSentences {

	private final Names.Known names;

	FactSentences(Names.Known names) {
		this.names = names;
	}

	String say(StoryFact fact) {
		return switch (fact.kind()) {
			case NOMINATED -> by(fact) + "nominated %s as %s.".formatted(fact.tag(), Words.a(species(fact.detail())));
			case NOMINATION_ASSIGN, NOMINATION_REASSIGN, NOMINATION_HAND_BACK, NOMINATION_RETURN, NOMINATION_ANSWER,
					NOMINATION_LAPSE, NOMINATION_DECLINE, NOMINATION_WITHDRAW, NOMINATION_REOPEN ->
				move(fact, "the nomination of " + fact.tag());
			case NOMINATION_REMINDED ->
				by(fact) + "reminded of the nomination of %s, which lapses on %s unless what was asked is answered."
					.formatted(fact.tag(), effective(fact));
			case MEASUREMENT_ASSIGN, MEASUREMENT_REASSIGN, MEASUREMENT_HAND_BACK, MEASUREMENT_WITHDRAW,
					MEASUREMENT_REOPEN ->
				move(fact, visit(fact));
			case IMPORTED, MEASURED, MEASURED_BY_VERIFIER, SIGNED_OFF, TITLE_WAITS, TITLE_ASSENTED, REVOKED, SET_ASIDE,
					REDUCED_AGAIN ->
				measurement(fact);
			case CONDITION_SEEN, CONDITION_CONFIRMED, CONDITION_NOT_CONFIRMED -> condition(fact);
			case MERGED, MERGE_REVOKED, TOLD_APART, SPLIT -> twoTrees(fact);
			case RULEBOOK, RULEBOOK_IN_FORCE, FOLDED -> rules(fact);
			case ACCEPTED, RE_IDENTIFIED, RELOCATED, RELOCATION_PROPOSED, RELOCATION_REFUSED, ELIGIBLE, INELIGIBLE,
					TAKEN_OFF, STEM_RULING, PHOTO_PASSED ->
				tree(fact);
		};
	}

	private static String move(StoryFact fact, String what) {
		return by(fact) + switch (fact.kind()) {
			case NOMINATION_ASSIGN, MEASUREMENT_ASSIGN -> "gave %s to %s to verify.".formatted(what, fact.detail());
			case NOMINATION_REASSIGN, MEASUREMENT_REASSIGN ->
				"gave %s to another verifier, %s.".formatted(what, fact.detail());
			case NOMINATION_HAND_BACK, MEASUREMENT_HAND_BACK -> "handed %s back undecided.".formatted(what);
			case NOMINATION_RETURN -> "returned %s for more information.".formatted(what);
			case NOMINATION_ANSWER -> "answered what was asked about %s.".formatted(what);
			case NOMINATION_LAPSE -> "let %s lapse unanswered.".formatted(what);
			case NOMINATION_DECLINE -> "declined %s.".formatted(what);
			case NOMINATION_WITHDRAW, MEASUREMENT_WITHDRAW -> "withdrew %s.".formatted(what);
			default -> "took up %s again.".formatted(what);
		};
	}

	private static String visit(StoryFact fact) {
		return "the measurement of %s taken %s".formatted(fact.tag(), measured(fact));
	}

	private String measurement(StoryFact fact) {
		if (fact.trees() > 1) {
			return "%stook in %d trees from %s.".formatted(by(fact), fact.trees(), older(fact));
		}
		String visit = visit(fact);
		if (fact.kind() == FactKind.TITLE_WAITS) {
			return "The sign-off by %s on %s was left to a coordinator's yes: it would change who holds a title."
				.formatted(fact.detail(), visit);
		}
		return by(fact) + switch (fact.kind()) {
			case IMPORTED ->
				"took in %s from %s, measured %s: %s.".formatted(fact.tag(), older(fact), measured(fact), points(fact));
			case MEASURED -> "filed %s: %s.".formatted(visit, points(fact));
			case MEASURED_BY_VERIFIER ->
				"measured %s again %s: %s.".formatted(fact.tag(), measured(fact), points(fact));
			case SIGNED_OFF -> verdict(fact, visit);
			case TITLE_ASSENTED ->
				"gave the coordinator's yes to the sign-off by %s on %s, which changes who holds a title."
					.formatted(fact.detail(), visit);
			case REVOKED -> "revoked the sign-off by %s on %s.".formatted(fact.earlier(), visit);
			case SET_ASIDE -> "set %s aside.".formatted(visit);
			default -> "worked out %s again: %s.".formatted(visit, points(fact));
		};
	}

	private static String verdict(StoryFact fact, String visit) {
		boolean own = fact.earlier() != null;
		return switch (String.valueOf(fact.detail())) {
			case "confirmed" -> "confirmed %s%s.".formatted(visit, own ? " by their own figures" : "");
			case "corrected" -> "corrected %s by their own figures.".formatted(visit);
			default -> "did not confirm %s%s.".formatted(visit, own ? ", by their own figures" : "");
		};
	}

	private static String condition(StoryFact fact) {
		String seen = "%s %s".formatted(fact.tag(), switch (String.valueOf(fact.detail())) {
			case "upright" -> "was standing";
			case "not-found" -> "was not to be found";
			case "fallen" -> "had fallen";
			case "removed" -> "had been removed";
			case "damaged" -> "had lost a part";
			case "dead" -> "was dead";
			default -> "was " + fact.detail();
		});
		return by(fact) + switch (fact.kind()) {
			case CONDITION_SEEN -> "reported that %s, as seen on %s.".formatted(seen, effective(fact));
			case CONDITION_CONFIRMED -> "confirmed that %s by %s.".formatted(seen, effective(fact));
			default -> "did not accept the report that %s by %s.".formatted(seen, effective(fact));
		};
	}

	private static String twoTrees(StoryFact fact) {
		return by(fact) + switch (fact.kind()) {
			case MERGED ->
				"found %s to be the same tree as %s and merged it into that.".formatted(fact.tag(), fact.otherTag());
			case TOLD_APART -> "found %s and %s to be two trees.".formatted(fact.tag(), fact.otherTag());
			case MERGE_REVOKED -> "revoked the merging of %s into %s.".formatted(fact.tag(), fact.otherTag());
			default -> "found %s to be two trees and split off %s.".formatted(fact.tag(), fact.otherTag());
		};
	}

	private String rules(StoryFact fact) {
		if (fact.kind() == FactKind.FOLDED) {
			return "%srecorded that %s is now counted as %s.".formatted(by(fact), species(fact.earlier()),
					species(fact.detail()));
		}
		String county = Words.possessive(this.names.county(fact.county()));
		if (Rulebook.BEGINNING.equals(fact.effectiveOn())) {
			return "%srecorded %s first rules.".formatted(by(fact), county);
		}
		return (fact.kind() == FactKind.RULEBOOK)
				? "%srecorded %s rules from %s on.".formatted(by(fact), county, effective(fact))
				: "%s rules for the time from %s on came into force.".formatted(county, effective(fact));
	}

	private String tree(StoryFact fact) {
		String tree = fact.tag();
		return (fact.kind() == FactKind.ACCEPTED) ? "%s came on the books.".formatted(tree)
				: by(fact) + switch (fact.kind()) {
					case RE_IDENTIFIED -> "identified %s as %s; it had been taken for %s.".formatted(tree,
							Words.a(species(fact.detail())), Words.a(species(fact.earlier())));
					case RELOCATED -> located(fact);
					case RELOCATION_PROPOSED -> "proposed that %s stands in %s.".formatted(tree, county(fact.detail()));
					case RELOCATION_REFUSED ->
						"did not agree that %s stands in %s.".formatted(tree, county(fact.detail()));
					case ELIGIBLE -> "judged %s eligible.".formatted(tree);
					case INELIGIBLE -> "judged %s not eligible.".formatted(tree);
					case PHOTO_PASSED -> "passed a photo of %s that shows %s.".formatted(tree, shown(fact));
					case TAKEN_OFF -> "took %s off the books.".formatted(tree);
					default -> "ruled which stem of %s is scored, from %s on.".formatted(tree, effective(fact));
				};
	}

	private static String shown(StoryFact fact) {
		return switch (String.valueOf(fact.detail())) {
			case "whole" -> "all of it";
			case "tape" -> "the tape around it";
			case "leaf" -> "its leaves";
			case "damage" -> "damage to it";
			default -> "its " + fact.detail();
		};
	}

	private String located(StoryFact fact) {
		String now = String.valueOf(fact.detail());
		String before = String.valueOf(fact.earlier());
		return now.equals(before) ? "corrected the place of %s.".formatted(fact.tag())
				: "corrected the place of %s: it stands in %s, not in %s.".formatted(fact.tag(), this.names.county(now),
						this.names.county(before));
	}

	private String species(@Nullable String key) {
		return this.names.species(Objects.requireNonNull(key));
	}

	private String county(@Nullable String key) {
		return this.names.county(Objects.requireNonNull(key));
	}

	private static String by(StoryFact fact) {
		return ((fact.by() != null) ? fact.by() : "The register") + " ";
	}

	private static String effective(StoryFact fact) {
		return Words.day(Objects.requireNonNull(fact.effectiveOn()));
	}

	private static String measured(StoryFact fact) {
		return Words.on(KnownDay.parse(Objects.requireNonNull(fact.measured())));
	}

	private static String points(StoryFact fact) {
		return (fact.points() != null) ? Words.points(fact.points()) + " points" : "not all figures";
	}

	private static String older(StoryFact fact) {
		return (fact.detail() != null) ? "an older record (%s)".formatted(fact.detail()) : "an older record";
	}

}
