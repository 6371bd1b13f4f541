package county.bigtree.registry.records;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.registry.people.Actor;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lists the sheets of a folder, whoever asks: which of them the asker may see is left to
 * the addresses themselves.
 */
@Component
class ListSheets {

	/** More than anyone reads; the rest is asked for tree by tree. */
	static final int MOST_TREES = 200;

	private static final String PEOPLE = "who filed it and the county's verifiers";

	private static final String COORDINATORS = "the county's coordinators";

	/** Things that hang on a tree, found by a condition on the tree or the person. */
	private static final List<Kind> KINDS = List.of(
			new Kind("nominations", "select id from nomination where tree = any(:trees)",
					"select id from nomination where nominator = :person", PEOPLE),
			new Kind("measurements", "select id from measurement where tree = any(:trees)",
					"select id from measurement where filed_by = :person", PEOPLE),
			new Kind("sign-offs",
					"""
							select s.id from sign_off s join measurement m on m.id = s.measurement where m.tree = any(:trees)""",
					"select id from sign_off where given_by = :person", "the county's verifiers"),
			new Kind("condition-reports", "select id from condition_report where tree = any(:trees)",
					"select id from condition_report where reported_by = :person", PEOPLE),
			new Kind("visits", "select id from visit where tree = any(:trees)",
					"select id from visit where verifier = :person or planned_by = :person",
					"the verifier who makes it and the county's coordinators"),
			new Kind("letters", "select id from letter where tree = any(:trees)", null, COORDINATORS),
			new Kind("relocations", "select id from relocation_proposal where tree = any(:trees)", null,
					"the coordinators of the two counties"));

	private static final String PHOTOS = """
			select id from photo p where by_person = :person and not exists (select from photo_erasure where photo = p.id)""";

	private static final String PHOTOS_FOR = "anyone, once they are published; before, who sent them and the county's verifiers";

	private final JdbcClient jdbc;

	ListSheets(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@Transactional(readOnly = true)
	public Sheets of(Subject subject) {
		if (subject instanceof Subject.OfTree tree) {
			return new Sheets(ofTree(new Tree(tree.tree(), tree.tag())), false);
		}
		if (subject instanceof Subject.OfBook book) {
			return ofBook(book);
		}
		if (subject instanceof Subject.OfDays days) {
			return ofDays(days);
		}
		return new Sheets(ofPerson(((Subject.OfPerson) subject).person()), false);
	}

	/**
	 * The kinds of thing that the asker may see none of, whether or not there are any.
	 */
	List<Folder.Withheld> unasked(Subject subject, @Nullable Actor asker) {
		String county = county(subject);
		if (county == null || seesAll(subject, asker)) {
			return List.of();
		}
		return KINDS.stream()
			.filter((kind) -> asker == null || !asker.isVerifierIn(county) || kind.forCoordinators())
			.map((kind) -> new Folder.Withheld(kind.folder(), "for " + kind.forWhom()))
			.toList();
	}

	/** Whether the asker is a coordinator of the county that it is all about. */
	boolean seesAll(Subject subject, @Nullable Actor asker) {
		String county = county(subject);
		return county != null && asker != null && asker.isCoordinatorOf(county);
	}

	private static @Nullable String county(Subject subject) {
		return (subject instanceof Subject.OfTree tree) ? tree.county() : (subject instanceof Subject.OfBook book)
				? book.book().county() : (subject instanceof Subject.OfDays days) ? days.county() : null;
	}

	private List<Sheet> ofTree(Tree tree) {
		List<Sheet> sheets = new ArrayList<>();
		String address = "/api/v1/trees/" + tree.id();
		String folder = "trees/" + tree.tag() + "/";
		Map.of("tree", "", "scores", "/scores", "measurements", "/measurements", "photos", "/photos")
			.forEach((file, end) -> sheets
				.add(new Sheet(folder + file + ".json", address + end, file, "anyone, once the tree is accepted")));
		sheets.add(new Sheet(folder + "story.json", address + "/story?limit=500", "story",
				"anyone, once the tree is accepted"));
		sheets.add(new Sheet(folder + "owners.json", address + "/owners", "owners", COORDINATORS));
		sheets.add(new Sheet(folder + "place.json", address + "/place", "exact place", "the county's verifiers"));
		sheets.add(new Sheet(folder + "older-record.json", address + "/older-record", "older record", COORDINATORS));
		KINDS.forEach((kind) -> ids(kind.byTree(), "trees", new UUID[] { tree.id() })
			.forEach((id) -> sheets.add(kind.sheet(folder, id))));
		return sheets;
	}

	private Sheets ofBook(Subject.OfBook of) {
		String address = "/api/v1/counties/" + of.book().county() + "/species/" + of.book().species();
		List<Sheet> sheets = new ArrayList<>(Stream.of("standing", "titles", "story")
			.map((what) -> new Sheet(what + ".json", address + "/" + what + "?limit=500", what, "anyone"))
			.toList());
		return with(sheets,
				trees("""
						select t.id, t.tag from tree t
						join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
						join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
						where l.stands_in = :county and i.species = :species and kept_tree(t.id) = t.id
						order by t.tag limit :most""",
						Map.of("county", of.book().county(), "species", of.book().species(), "most", MOST_TREES + 1)));
	}

	/**
	 * What was recorded: the journal of those days, and the trees whose titles changed on
	 * them.
	 */
	private Sheets ofDays(Subject.OfDays of) {
		List<Sheet> sheets = new ArrayList<>();
		sheets
			.add(new Sheet("rulebooks.json", "/api/v1/counties/" + of.county() + "/rulebooks", "rulebooks", "anyone"));
		sheets.add(new Sheet("journal.json",
				"/api/v1/counties/" + of.county() + "/journal?from=" + of.from() + "&to=" + of.to() + "&limit=500",
				"journal", COORDINATORS));
		return with(sheets,
				trees("""
						select distinct t.id, t.tag from title_span s join tree t on t.id = s.tree
						where s.county = :county and (s.from_at >= :from and s.from_at < :until
						  or s.to_at >= :from and s.to_at < :until)
						order by t.tag limit :most""",
						Map.of("county", of.county(), "from", of.from().atStartOfDay().atOffset(ZoneOffset.UTC),
								"until", of.to().plusDays(1).atStartOfDay().atOffset(ZoneOffset.UTC), "most",
								MOST_TREES + 1)));
	}

	private Sheets with(List<Sheet> sheets, List<Tree> trees) {
		trees.stream().limit(MOST_TREES).forEach((tree) -> sheets.addAll(ofTree(tree)));
		return new Sheets(sheets, trees.size() > MOST_TREES);
	}

	private List<Sheet> ofPerson(UUID person) {
		List<Sheet> sheets = KINDS.stream()
			.filter((kind) -> kind.byPerson() != null)
			.flatMap((kind) -> ids(String.valueOf(kind.byPerson()), "person", person).stream()
				.map((id) -> kind.sheet("", id)))
			.collect(Collectors.toCollection(ArrayList::new));
		ids(PHOTOS, "person", person).forEach(
				(id) -> sheets.add(new Sheet("photos/" + id + ".json", "/api/v1/photos/" + id, "photos", PHOTOS_FOR)));
		return sheets;
	}

	private List<UUID> ids(String sql, String parameter, Object value) {
		return this.jdbc.sql(sql + " order by id").param(parameter, value).query(UUID.class).list();
	}

	private List<Tree> trees(String sql, Map<String, ?> parameters) {
		return this.jdbc.sql(sql).params(parameters).query(Tree.class).list();
	}

	private record Tree(UUID id, String tag) {

	}

	/**
	 * What is to be read.
	 *
	 * @param cut whether there were too many trees for one folder
	 */
	record Sheets(List<Sheet> all, boolean cut) {

		Sheets {
			all = List.copyOf(all);
		}

	}

	/**
	 * A kind of thing that has an address of its own.
	 */
	private record Kind(String folder, String byTree, @Nullable String byPerson, String forWhom) {

		boolean forCoordinators() {
			return this.forWhom.contains("coordinators");
		}

		Sheet sheet(String within, UUID id) {
			return new Sheet(within + this.folder + "/" + id + ".json", "/api/v1/" + this.folder + "/" + id,
					this.folder, this.forWhom);
		}

	}

}
