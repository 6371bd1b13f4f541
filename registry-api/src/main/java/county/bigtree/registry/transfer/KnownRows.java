package county.bigtree.registry.transfer;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.measurement.MeasurementBody;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Tells which rows are on the books already, and what of them is new. Rows of an import
 * that was taken back are not, nor are those of trees that were taken off the books.
 */
@Component
class KnownRows {

	/** Figures are kept to so much. */
	private static final BigDecimal ALIKE = new BigDecimal("0.0001");

	private final JdbcClient jdbc;

	KnownRows(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Sorts rows of a job by what they come to. Rows that this same job took before it
	 * was interrupted are its own.
	 */
	Sorted sort(ImportJob job, List<FileRow.Sound> rows) {
		Map<String, Known> known = find(job, rows.stream().map(FileRow.Sound::key).toList());
		Sorted sorted = new Sorted(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
		for (FileRow.Sound row : rows) {
			Known one = known.get(row.key());
			if (one == null) {
				sorted.fresh().add(row);
				sorted.counts().add(brought(row));
			}
			else if (one.job().equals(job.id())) {
				sorted.counts().add(one.brought() ? brought(row) : ImportJob.Counts.CHANGED);
			}
			else {
				sortKnown(job, sorted, one, row);
				continue;
			}
			sorted.told().add(row);
		}
		return sorted;
	}

	private void sortKnown(ImportJob job, Sorted sorted, Known known, FileRow.Sound row) {
		FileRow.Sound news = row.news(newVisits(known.tree(), row.visits()), newSight(known.tree(), row.sight()));
		boolean any = !news.visits().isEmpty() || news.sight() != null;
		boolean here = known.standsIn().equals(job.county());
		sorted.counts().add((any && here) ? ImportJob.Counts.CHANGED : ImportJob.Counts.ALREADY);
		if (any && here) {
			sorted.further().add(new Further(known.tree(), news));
		}
		FileRow.Sound named = known.species().contains(row.species()) ? row : row
			.noting("its tree is on the books as %s, and not as %s".formatted(known.species().get(0), row.species()));
		sorted.told()
			.add((any && !here) ? named.noting("its tree stands in " + known.standsIn()
					+ " by now, so that what is new here is for the coordinators there") : named);
	}

	private static ImportJob.Counts brought(FileRow.Sound row) {
		return row.ranked() ? ImportJob.Counts.ACCEPTED : ImportJob.Counts.KEPT;
	}

	/**
	 * Which of the keys are on the books.
	 */
	Map<String, Known> find(ImportJob job, Collection<String> keys) {
		Map<String, Known> known = new HashMap<>();
		this.jdbc
			.sql("""
						select r.row_key, r.job, r.brought, k.tree, l.stands_in, i.species, ranked_as(i.species, 'infinity') as ranked_as
					from import_part r
						cross join lateral (select kept_tree(r.tree) as tree) k
						cross join lateral (select stands_in from location where tree = k.tree order by recorded_at desc limit 1) l
						cross join lateral (select species from identification where tree = k.tree order by recorded_at desc limit 1) i
					where r.county = :county and r.row_key in (:keys)
						  and not exists (select from import_withdrawal where job = r.job)
						  and (r.job = :job or not exists (select from taking_off where tree = k.tree))
						order by r.job = :job, r.recorded_at""")
			.param("county", job.county())
			.param("keys", keys)
			.param("job", job.id())
			.query((row) -> {
				known.put(row.getString("row_key"),
						new Known(row.getObject("job", UUID.class), row.getObject("tree", UUID.class),
								row.getBoolean("brought"), row.getString("stands_in"),
								List.of(row.getString("species"), row.getString("ranked_as"))));
			});
		return known;
	}

	/** Those whose figures are not the last that came for their day. */
	private List<MeasurementBody> newVisits(UUID tree, List<MeasurementBody> visits) {
		if (visits.isEmpty()) {
			return visits;
		}
		Map<LocalDate, Figures> last = new HashMap<>();
		this.jdbc
			.sql("""
					select distinct on (m.measured_on) m.measured_on, r.girth_inches, r.height_feet, r.crown_feet from measurement m
					cross join lateral (select * from reduction where measurement = m.id order by version desc limit 1) r
					where m.tree in (select tree_family(?, 'infinity')) and m.basis = 'carried-over'
					  and not exists (select from import_row i join import_withdrawal w on w.job = i.job
					    where i.tree = m.tree and i.county = m.county and i.seq = m.seq)
					order by m.measured_on, m.recorded_at desc""")
			.param(tree)
			.query((row) -> {
				last.put(row.getObject("measured_on", LocalDate.class), new Figures(row.getBigDecimal("girth_inches"),
						row.getBigDecimal("height_feet"), row.getBigDecimal("crown_feet")));
			});
		return visits.stream().filter((visit) -> {
			KnownDay day = Objects.requireNonNull(visit.measuredOn());
			Figures known = last.get(day.last());
			return known == null || !known.alike(Figures.of(visit));
		}).toList();
	}

	private FileRow.@Nullable Sight newSight(UUID tree, FileRow.@Nullable Sight sight) {
		return (sight == null || this.jdbc.sql("""
				select exists (select from condition_report where tree in (select tree_family(?, 'infinity'))
				  and condition = ? and observed_on = ?)""")
			.params(tree, sight.condition().word(), sight.observedOn())
			.query(Boolean.class)
			.single()) ? null : sight;
	}

	/**
	 * A row that is on the books.
	 *
	 * @param tree the tree, or that into which it was merged
	 * @param brought whether the row brought a tree, and not only figures to one
	 * @param standsIn the county where the tree stands
	 * @param species what it is identified as, and as what it is ranked
	 */
	record Known(UUID job, UUID tree, boolean brought, String standsIn, List<String> species) {
	}

	/**
	 * A row of a tree on the books, of which only what is new is left.
	 */
	record Further(UUID tree, FileRow.Sound row) {
	}

	/**
	 * Rows by what they come to.
	 *
	 * @param fresh those that bring a tree
	 * @param further those that bring something to a tree
	 * @param told all of them, with what is to be told of each
	 */
	record Sorted(List<FileRow.Sound> fresh, List<Further> further, List<FileRow.Sound> told,
			List<ImportJob.Counts> counts) {

		ImportJob.Counts total() {
			return this.counts.stream().reduce(ImportJob.Counts.NONE, ImportJob.Counts::plus);
		}

	}

	/**
	 * What the readings of a visit come to.
	 */
	private record Figures(@Nullable BigDecimal girth, @Nullable BigDecimal height, @Nullable BigDecimal crown) {

		static Figures of(MeasurementBody visit) {
			Reduced reduced = new Readings(visit.girth(), visit.height(), visit.crown()).reduce();
			return new Figures(value(reduced.girthInches()), value(reduced.heightFeet()),
					value(reduced.crownSpreadFeet()));
		}

		boolean alike(Figures other) {
			return alike(this.girth, other.girth) && alike(this.height, other.height) && alike(this.crown, other.crown);
		}

		private static boolean alike(@Nullable BigDecimal one, @Nullable BigDecimal other) {
			return (one == null || other == null) ? one == other : one.subtract(other).abs().compareTo(ALIKE) <= 0;
		}

		private static @Nullable BigDecimal value(@Nullable Estimate estimate) {
			return (estimate != null) ? BigDecimal.valueOf(estimate.value()) : null;
		}

	}

}
