package county.bigtree.registry.measurement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.standing.Standings;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Readings reduced again where an older release's formulas, whose version is one less
 * than today's, gave other figures.
 */
@RegistryTest
class ReduceAgainIT {

	private static final String COUNTY = "mendland";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private ReduceAgain reducing;

	@Autowired
	private Journal journal;

	@Autowired
	private Facts facts;

	@Autowired
	private Texts texts;

	@Autowired
	private Standings standings;

	@Autowired
	private TransactionTemplate transaction;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void letsStandingsFollowAndKeepsWhatWasKnown() throws Exception {
		this.trees.county(COUNTY, "LFH");
		TestTrees.Filed rival = this.trees.standing(COUNTY, 120, "2024-05-02");
		TestTrees.Filed tree = this.trees.standing(COUNTY, 100, "2024-05-02");
		this.transaction.executeWithoutResult((status) -> recordByOlderFormulas(tree));
		this.trees.oaks(COUNTY)
			.andExpect(jsonPath("$.items[0].tree").value(tree.tree()))
			.andExpect(jsonPath("$.items[0].points").value(240.0));
		assertThat(this.reducing.county(COUNTY)).isOne();
		assertThat(this.reducing.county(COUNTY)).as("again").isZero();
		this.trees.oaks(COUNTY)
			.andExpect(jsonPath("$.items[0].tree").value(rival.tree()))
			.andExpect(jsonPath("$.items[1].points").value(200.0));
		this.trees.oakTitles(COUNTY).andExpect(jsonPath("$.items[1].ended").value("reduced-again"));
		this.trees.ask(get("/api/v1/trees/" + tree.tree() + "/scores"), tree.filer())
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[0].girthInches").value(110.0))
			.andExpect(jsonPath("$.items[1].girthInches").value(150.0))
			.andExpect(jsonPath("$.items[1].withdrawn").value("reduced-again"));
		assertThat(found()).isEmpty();
	}

	/**
	 * Two segments of 100 ft, each uncertain by 3 % of its own, made an axis uncertain by
	 * 4.24 ft; of one tape they are by 6 ft. With an axis of 150 ft the spread is
	 * uncertain by half of √(6² + 4.5²) = 3.75 ft where it was by 3.09, and the points by
	 * √(0.37² + 0.3² + (3.75 / 4)²) = 1.05. By hand.
	 */
	@Test
	void judgesSegmentsOfOneTapeAnew() throws Exception {
		this.trees.county("segmentton", "LFI");
		TestTrees.Filed tree = this.trees.standing("segmentton", 100, "2024-05-02");
		String readings = """
				{"girth": {"method": "tape", "girth": {"value": 110, "unit": "in"}},
				 "height": {"method": "pole", "height": {"value": 80, "unit": "ft"}},
				 "crown": {"method": "axes", "axes": [{"segments": [{"value": 100, "unit": "ft"},
				   {"value": 100, "unit": "ft"}]}, {"value": 150, "unit": "ft"}]}}""";
		this.transaction.executeWithoutResult((status) -> {
			Change change = this.journal.open("segmentton");
			UUID id = measurement(change, tree, readings);
			this.facts.append(change, FactTable.REDUCTION, "measurement", id, "version", 1, "girth_inches", 110,
					"girth_u", 0.37, "height_feet", 80, "height_u", 0.3, "crown_feet", 175, "crown_u", 3.0923, "points",
					Points.of(110, 80, 175).toBigDecimal(), "points_u", 0.9085);
			this.standings.refresh(change, UUID.fromString(tree.tree()), TitleReason.SIGNED_OFF);
			this.journal.close(change, "measured-long-ago", null);
		});
		this.trees.oaks("segmentton")
			.andExpect(jsonPath("$.items[0].points").value(233.75))
			.andExpect(jsonPath("$.items[0].pointsStandardUncertainty").value(0.91));
		assertThat(this.reducing.county("segmentton")).isOne();
		this.trees.oaks("segmentton")
			.andExpect(jsonPath("$.items[0].points").value(233.75))
			.andExpect(jsonPath("$.items[0].pointsStandardUncertainty").value(1.05))
			.andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	private UUID measurement(Change change, TestTrees.Filed tree, String readings) {
		UUID id = Uuid7.next();
		this.facts.append(change, FactTable.MEASUREMENT, "id", id, "tree", UUID.fromString(tree.tree()), "measured_on",
				LocalDate.of(2025, 5, 2), "filed_by", this.people.administrator().id(), "basis", "carried-over",
				"carried_over_from", "an older book", "measurers", this.texts.keepAlways(change, "[]"), "readings",
				readings, "confirmed_checks", "[]");
		return id;
	}

	/**
	 * 110 in by its readings, 150 in by the older formulas.
	 */
	private void recordByOlderFormulas(TestTrees.Filed tree) {
		Change change = this.journal.open(COUNTY);
		UUID id = measurement(change, tree, "{" + TestTrees.readings(110) + "}");
		this.facts.append(change, FactTable.REDUCTION, "measurement", id, "version", Reduced.VERSION - 1,
				"girth_inches", 150, "girth_u", 0.5, "height_feet", 80, "height_u", 0.5, "crown_feet", 40, "crown_u",
				0.5, "points", Points.of(150, 80, 40).toBigDecimal(), "points_u", 0.7);
		this.standings.refresh(change, UUID.fromString(tree.tree()), TitleReason.SIGNED_OFF);
		this.journal.close(change, "measured-long-ago", null);
	}

	private List<String> found() {
		List<String> found = new ArrayList<>();
		this.checks.stream()
			.filter((check) -> !check.subject().startsWith("witnesses"))
			.forEach((check) -> this.transaction
				.executeWithoutResult((status) -> check.look(new Findings(1000, found::add, (looked) -> {
				}))));
		return found.stream().filter((line) -> line.contains(COUNTY)).toList();
	}

}
