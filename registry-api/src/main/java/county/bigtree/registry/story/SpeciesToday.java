package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * Who holds the titles of a species in a county today.
 *
 * @param species its common name
 * @param county the county's name
 * @param holders who holds a title, champions first
 * @param leader who leads the ranking, or null where nobody is ranked
 */
record SpeciesToday(String species, String county, List<Holder> holders, @Nullable Leader leader) {

	SpeciesToday {
		holders = List.copyOf(holders);
	}

	/**
	 * The sentence that says it.
	 */
	String sentence() {
		List<Holder> champions = this.holders.stream().filter(Holder::champion).toList();
		if (!champions.isEmpty()) {
			return champions(champions) + others() + ".";
		}
		return (this.leader != null)
				? "No %s in %s holds the title; %s leads the ranking with %s points.".formatted(this.species,
						this.county, this.leader.tag(), Words.points(this.leader.points()))
				: "No %s in %s is ranked.".formatted(this.species, this.county);
	}

	private String champions(List<Holder> champions) {
		String title = "%s champion %s".formatted(Words.possessive(this.county), this.species);
		Holder first = champions.get(0);
		return (champions.size() == 1)
				? "%s has been %s since %s with %s".formatted(first.tag(), title, Words.day(first.since()),
						TreeToday.figures(first.points(), first.measured(), first.carriedOver(), first.lostOn()))
				: "%s share the title of %s with %s points each".formatted(
						Words.list(champions.stream().map(Holder::tag).toList()), title, Words.points(first.points()));
	}

	private String others() {
		List<String> others = this.holders.stream()
			.filter((holder) -> !holder.champion())
			.map((holder) -> "%s (%s points)".formatted(holder.tag(), Words.points(holder.points())))
			.toList();
		return switch (others.size()) {
			case 0 -> "";
			case 1 -> "; %s is co-champion".formatted(others.get(0));
			default -> "; %s are co-champions".formatted(Words.list(others));
		};
	}

	/**
	 * A tree that holds a title.
	 *
	 * @param since the day in the county on which it was recognised
	 * @param measured the measuring day as exactly as it is known
	 */
	record Holder(String tag, String title, LocalDate since, BigDecimal points, String measured, boolean carriedOver,
			@Nullable LocalDate lostOn) {

		boolean champion() {
			return this.title.equals("champion");
		}

	}

	/**
	 * The tree with the most points.
	 */
	record Leader(String tag, BigDecimal points) {
	}

}
