package county.bigtree.registry.measurement;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.standing.Standings;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reduces the readings on record again where that was last done by older formulas. What
 * they came to before stays known as of then. All of a county is one change, so that no
 * title changes hands on the way.
 */
@Service
public class ReduceAgain {

	private static final String OUTDATED = """
			select m.id, m.readings::text as readings, kept_tree(t.tree) as tree, k.stands_in as kept_in
			from measurement m
			cross join lateral (select measurement_tree(m.id, m.tree) as tree) t
			join lateral (select stands_in from location where tree = t.tree order by recorded_at desc limit 1) l on true
			join lateral (select stands_in from location where tree = kept_tree(t.tree)
			  order by recorded_at desc limit 1) k on true
			where (select max(version) from reduction where measurement = m.id) < :version and l.stands_in = :county
			order by m.id""";

	private final JdbcClient jdbc;

	private final JsonMapper json;

	private final RecordMeasurement record;

	private final Standings standings;

	private final Journal journal;

	ReduceAgain(JdbcClient jdbc, JsonMapper json, RecordMeasurement record, Standings standings, Journal journal) {
		this.jdbc = jdbc;
		this.json = json;
		this.record = record;
		this.standings = standings;
		this.journal = journal;
	}

	/**
	 * The counties of the register.
	 */
	public List<String> counties() {
		return this.jdbc.sql("select key from county order by key").query(String.class).list();
	}

	/**
	 * Reduces what is outdated in a county and lets its standings follow.
	 * @return how many measurements were reduced again
	 * @throws RuntimeException naming the measurement whose readings today's formulas
	 * refuse; nothing is changed then
	 */
	@Transactional
	public int county(String county) {
		Set<String> keptIn = outdated(county).stream()
			.map(Outdated::keptIn)
			.collect(Collectors.toCollection(TreeSet::new));
		if (keptIn.isEmpty()) {
			return 0;
		}
		Change change = this.journal.open(county, keptIn);
		List<Outdated> outdated = outdated(county);
		Set<UUID> trees = new LinkedHashSet<>();
		for (Outdated measurement : outdated) {
			this.record.append(change, measurement.id(), reduced(measurement));
			trees.add(measurement.tree());
		}
		this.standings.refresh(change, trees, TitleReason.REDUCED_AGAIN);
		this.journal.close(change, "reduced-again", null);
		return outdated.size();
	}

	private Reduced reduced(Outdated measurement) {
		try {
			return ReadingsJson.readings(this.json.readTree(measurement.readings())).reduce();
		}
		catch (RuntimeException ex) {
			throw new IllegalStateException("The readings of measurement " + measurement.id() + " can't be reduced",
					ex);
		}
	}

	private List<Outdated> outdated(String county) {
		return this.jdbc.sql(OUTDATED)
			.param("version", Reduced.VERSION)
			.param("county", county)
			.query(Outdated.class)
			.list();
	}

	/**
	 * A measurement whose figures come from older formulas.
	 *
	 * @param tree the tree that it counts for
	 */
	private record Outdated(UUID id, String readings, UUID tree, String keptIn) {
	}

}
