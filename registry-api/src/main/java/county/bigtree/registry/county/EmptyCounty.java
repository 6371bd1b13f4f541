package county.bigtree.registry.county;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.Standings;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes all trees of a county for practice off its books. They keep their tags and their
 * facts. Each change takes whole species, so that no tree is announced as the champion
 * only because those before it were taken off first.
 */
@Service
public class EmptyCounty {

	/** Trees after which a change takes no further species. */
	static final int SLICE = 500;

	/** The trees that stand there, with the book of the tree that each is part of. */
	private static final String TREES = """
			select t.id as tree, ranked_as(i.species, 'infinity') as species, kl.stands_in as kept_in
			from tree t
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			join lateral (select kept_tree(t.id) as id) k on true
			join lateral (select species from identification where tree = k.id order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = k.id order by recorded_at desc limit 1) kl on true
			where t.id in (select tree from location where county = :county or stands_in = :county and county <> stands_in)
			  and l.stands_in = :county and not exists (select from taking_off where tree = t.id)
			order by species, t.id""";

	private final Journal journal;

	private final Facts facts;

	private final Texts texts;

	private final Standings standings;

	private final JdbcClient jdbc;

	EmptyCounty(Journal journal, Facts facts, Texts texts, Standings standings, JdbcClient jdbc) {
		this.journal = journal;
		this.facts = facts;
		this.texts = texts;
		this.standings = standings;
		this.jdbc = jdbc;
	}

	/**
	 * Takes the trees off and answers how many those were.
	 */
	@Transactional
	public int empty(Actor actor, String county, String reason) {
		if (!actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may empty it.");
		}
		if (!this.jdbc.sql("select practice from county where key = ?").param(county).query(Boolean.class).single()) {
			throw Problem.of(ProblemType.CONFLICT, "Only a county that is for practice is emptied.");
		}
		this.journal.lock(county);
		List<OnTheBooks> trees = this.jdbc.sql(TREES).param("county", county).query(OnTheBooks.class).list();
		slices(trees).forEach((slice) -> takeOff(actor, county, slice, reason));
		return trees.size();
	}

	private void takeOff(Actor actor, String county, List<OnTheBooks> slice, String reason) {
		Set<String> counties = slice.stream().map(OnTheBooks::keptIn).collect(Collectors.toSet());
		Change change = this.journal.open(county, counties);
		UUID why = this.texts.keep(change, reason);
		List<UUID> trees = slice.stream().map(OnTheBooks::tree).toList();
		trees.forEach((tree) -> this.facts.append(change, FactTable.TAKING_OFF, "tree", tree, "why", "practice-emptied",
				"by_person", actor.id(), "reason", why));
		this.standings.refresh(change, trees, TitleReason.TAKEN_OFF);
		this.journal.close(change, "emptied", actor.id());
	}

	static List<List<OnTheBooks>> slices(List<OnTheBooks> bySpecies) {
		List<List<OnTheBooks>> slices = new ArrayList<>();
		List<OnTheBooks> slice = new ArrayList<>();
		for (OnTheBooks tree : bySpecies) {
			if (slice.size() >= SLICE && !slice.get(slice.size() - 1).species().equals(tree.species())) {
				slices.add(slice);
				slice = new ArrayList<>();
			}
			slice.add(tree);
		}
		if (!slice.isEmpty()) {
			slices.add(slice);
		}
		return slices;
	}

	/**
	 * A tree that stands in the county.
	 *
	 * @param species in whose book it, or the tree into which it is merged, is ranked
	 * @param keptIn the county of that tree
	 */
	record OnTheBooks(UUID tree, String species, String keptIn) {
	}

}
