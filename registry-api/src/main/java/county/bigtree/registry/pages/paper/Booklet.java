package county.bigtree.registry.pages.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.species.Species;
import county.bigtree.registry.standing.StandingPage;
import org.jspecify.annotations.Nullable;

/**
 * The rankings of a county's species, in the order of their common names, and the index
 * to them.
 */
public record Booklet(List<Chapter> chapters) {

	/** So many species are named in the contents as well. */
	private static final int FEW = 60;

	private static final Comparator<Chapter> BY_NAME = Comparator
		.comparing((Chapter chapter) -> chapter.species().commonName(), String.CASE_INSENSITIVE_ORDER)
		.thenComparing((chapter) -> chapter.species().key());

	static Booklet of(List<Chapter> chapters) {
		return new Booklet(chapters.stream().sorted(BY_NAME).toList());
	}

	public boolean few() {
		return this.chapters.size() <= FEW;
	}

	public int trees() {
		return this.chapters.stream().mapToInt((chapter) -> chapter.items().size()).sum();
	}

	/** Every species by its common and by its scientific name. */
	public List<Entry> index() {
		List<Entry> entries = new ArrayList<>();
		this.chapters.forEach((chapter) -> {
			entries.add(new Entry(chapter.species().commonName(), false, chapter.anchor()));
			if (!chapter.species().scientificName().equals(chapter.species().commonName())) {
				entries.add(new Entry(chapter.species().scientificName(), true, chapter.anchor()));
			}
		});
		entries.sort(Comparator.comparing(Entry::name, String.CASE_INSENSITIVE_ORDER).thenComparing(Entry::anchor));
		return entries;
	}

	/**
	 * The ranking of a species.
	 *
	 * @param items all that are ranked
	 * @param eligible whether the rules let trees of it hold titles
	 */
	public record Chapter(Species species, List<StandingPage.Item> items, boolean eligible) {

		public String anchor() {
			return "s-" + this.species.key();
		}

		/** Whether it is short enough to stand on one page. */
		public boolean whole() {
			return this.items.size() <= 12;
		}

		/** The champion, else who leads the ranking. */
		Optional<StandingPage.Item> leader() {
			return this.items.stream()
				.filter((item) -> item.title() != null)
				.findFirst()
				.or(() -> this.items.stream().findFirst());
		}

		/** The tree that leads, where it may be shown as itself. */
		@Nullable UUID leaderShown() {
			return leader().filter((item) -> item.figures().listed()).map((item) -> item.scored().tree()).orElse(null);
		}

	}

	/**
	 * A line of the index.
	 *
	 * @param scientific whether the name is the scientific one
	 * @param anchor of the chapter
	 */
	public record Entry(String name, boolean scientific, String anchor) {
	}

}
