package county.bigtree.registry.pages.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import county.bigtree.registry.species.Species;
import county.bigtree.registry.standing.StandingPage;

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

	/** Each species by its common name. */
	public List<Side> contents() {
		return Side.of(this.chapters.stream()
			.map((chapter) -> new Entry(chapter.species().commonName(), false, chapter.anchor()))
			.toList());
	}

	/** Every species by its common and by its scientific name. */
	public List<Side> index() {
		List<Entry> entries = new ArrayList<>();
		this.chapters.forEach((chapter) -> {
			entries.add(new Entry(chapter.species().commonName(), false, chapter.anchor()));
			if (!chapter.species().scientificName().equals(chapter.species().commonName())) {
				entries.add(new Entry(chapter.species().scientificName(), true, chapter.anchor()));
			}
		});
		entries.sort(Comparator.comparing(Entry::name, String.CASE_INSENSITIVE_ORDER).thenComparing(Entry::anchor));
		return Side.of(entries);
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

		/** Whether several hold the title, each of them then a co-champion. */
		public boolean shared() {
			return this.items.stream().filter((item) -> item.title() != null).count() > 1;
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

	}

	/**
	 * A line of the index.
	 *
	 * @param scientific whether the name is the scientific one
	 * @param anchor of the chapter
	 */
	public record Entry(String name, boolean scientific, String anchor) {
	}

	/**
	 * Lines of one page in two columns, of which the left one is read first.
	 */
	public record Side(List<Entry> left, List<Entry> right) {

		/** So many lines of the index stand below each other on Letter. */
		private static final int LINES = 54;

		static List<Side> of(List<Entry> entries) {
			List<Side> sides = new ArrayList<>();
			for (int at = 0; at < entries.size(); at += 2 * LINES) {
				int end = Math.min(entries.size(), at + 2 * LINES);
				int middle = at + (end - at + 1) / 2;
				sides.add(new Side(entries.subList(at, middle), entries.subList(middle, end)));
			}
			return sides;
		}

		public List<List<Entry>> columns() {
			return List.of(this.left, this.right);
		}

	}

}
