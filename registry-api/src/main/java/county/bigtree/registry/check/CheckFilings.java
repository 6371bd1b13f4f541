package county.bigtree.registry.check;

import java.util.List;
import java.util.UUID;

import county.bigtree.domain.check.Checks;
import county.bigtree.domain.check.CountyForm;
import county.bigtree.domain.check.Earlier;
import county.bigtree.domain.check.Filed;
import county.bigtree.domain.check.Finding;
import county.bigtree.domain.check.Known;
import county.bigtree.domain.check.RulesOfFiling;
import county.bigtree.domain.check.Severity;
import county.bigtree.domain.check.Sizes;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Checks what is filed, and refuses what can't be true and what was asked and not
 * answered.
 */
@Component
public class CheckFilings {

	private static final String TREE = """
			select t.id, c.key as county, i.species, ranked_as(i.species, 'infinity') as ranked_as, n.scientific_name, l.latitude, l.longitude, l.accuracy_metres,
			  not exists (select from measurement where tree = t.id) as is_new,
			  c.practice, c.boundary::text as boundary,
			  coalesce((select eligible from eligibility where tree = t.id order by recorded_at desc limit 1), true) as eligible
			from tree t
			join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
			join species n on n.key = i.species
			join lateral (select * from location where tree = t.id order by recorded_at desc limit 1) l on true
			join county_now c on c.key = l.stands_in
			where t.id = ?""";

	private final JdbcClient jdbc;

	private final CountyTrees trees;

	private final NearTrees near;

	private final EarlierVisits earlier;

	private final RulesReader rules;

	private final SunPlace sun = new SunPlace();

	CheckFilings(JdbcClient jdbc, CountyTrees trees, NearTrees near, EarlierVisits earlier, RulesReader rules) {
		this.jdbc = jdbc;
		this.trees = trees;
		this.near = near;
		this.earlier = earlier;
		this.rules = rules;
	}

	/**
	 * What the checks say on a filing, its questions answered.
	 * @throws Problem of unanswered checks, listing them, or of a refusal where it can't
	 * be true
	 */
	public List<Finding> answered(Change change, Filing filing) {
		FiledTree tree = tree(filing.tree());
		List<Finding> findings = Checks.on(filed(change, filing, tree), known(change, filing, tree));
		List<Finding> stops = findings.stream().filter((one) -> one.severity() == Severity.STOP).toList();
		if (!stops.isEmpty()) {
			throw Problem.of(ProblemType.REFUSED, stops.get(0).detail()).with("checks", FindingJson.of(stops));
		}
		List<Finding> open = findings.stream()
			.filter((one) -> one.severity() == Severity.QUESTION)
			.filter((one) -> !filing.confirmed().contains(one.code()))
			.toList();
		if (!open.isEmpty()) {
			throw Problem.of(ProblemType.UNANSWERED_CHECKS, open.get(0).detail()).with("checks", FindingJson.of(open));
		}
		return findings;
	}

	/**
	 * What the checks say on figures that an older record brings: nothing is asked.
	 */
	public List<Finding> noted(Change change, Filing filing) {
		return noted(change, filing, tree(filing.tree()).scientificName());
	}

	/**
	 * The same of a tree whose species is known.
	 */
	public List<Finding> noted(Change change, Filing filing, String scientificName) {
		Filed figures = Filed.figures(scientificName, Sizes.of(filing.reduced()), change.today());
		return Checks.on(figures, Known.onlyForm(CountyForm.UNKNOWN)).stream().map(Finding::asNote).toList();
	}

	private FiledTree tree(UUID id) {
		return this.jdbc.sql(TREE).param(id).query(FiledTree.class).single();
	}

	private static Filed filed(Change change, Filing filing, FiledTree tree) {
		return new Filed(tree.scientificName(), Sizes.of(filing.reduced()), filing.readings(), filing.leans(),
				filing.measuredOn(), change.today(), tree.position());
	}

	/** Of a tree on the books, the place was asked about when it was new. */
	private Known known(Change change, Filing filing, FiledTree tree) {
		RulesOfFiling says = rules(change, filing, tree);
		Earlier before = this.earlier.of(tree.id()).orElse(null);
		CountyForm form = this.trees.form(tree);
		if (!tree.isNew()) {
			return new Known(before, List.of(), null, form, tree.eligible(), says, this.sun);
		}
		CountyLine line = CountyLine.of(tree.boundary());
		boolean others = line != null && line.isNear(tree.position(), NearTrees.REACH);
		return new Known(before, this.near.of(tree, filing.filedBy(), others), line, form, tree.eligible(), says,
				this.sun);
	}

	/**
	 * How it is measured and what stands in is judged by the rules of its day, what it
	 * may win and until when it may be filed by those of today.
	 */
	private RulesOfFiling rules(Change change, Filing filing, FiledTree tree) {
		CountyRules county = this.rules.get(tree.county());
		Rulebook today = county.at(change.recordedAt());
		Rulebook then = county.on(filing.measuredOn(), change.recordedAt());
		return new RulesOfFiling(today.oldestFilingMonths(), today.admits(tree.rankedAs()), then.slopeRule(),
				filing.checks() ? CarryForward.NONE : then.carryForward());
	}

}
