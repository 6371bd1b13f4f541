package county.bigtree.registry.openness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.place.Position;
import county.bigtree.domain.place.Showing;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Finds the trees that a filter asks for, in the order of their tags: accepted, listed
 * today, in no county for practice. A box is held against the place as it is shown, never
 * against the tree's own.
 */
@Component
class FindOpenTrees {

	private static final int AT_ONCE = 1000;

	/** In degrees: more than a place as shown lies north or south of the tree's own. */
	private static final double SHIFT = 0.02;

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	FindOpenTrees(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The first of those whose tags come after one.
	 * @param after a tag, or the empty text
	 */
	@Transactional(readOnly = true)
	public List<Found> find(TreeFilter filter, String after, int most) {
		List<Found> found = new ArrayList<>();
		String last = after;
		while (found.size() < most) {
			int limit = (filter.box() != null) ? AT_ONCE : Math.min(AT_ONCE, most - found.size());
			List<Candidate> page = candidates(filter, last, limit);
			page.stream().filter((one) -> one.isIn(filter.box())).map(Candidate::found).forEach(found::add);
			if (page.size() < limit) {
				break;
			}
			last = page.get(page.size() - 1).found().tag();
		}
		return found.subList(0, Math.min(found.size(), most));
	}

	private List<Candidate> candidates(TreeFilter filter, String after, int limit) {
		Box box = filter.box();
		return this.jdbc
			.sql("""
					select d.id, d.tag, l.latitude, l.longitude, l.accuracy_metres, l.shown, w.* from (
					  select c.id, c.tag from tree c
					  join lateral (select species from identification where tree = c.id order by recorded_at desc limit 1) k on true
					  join lateral (select stands_in, latitude from location where tree = c.id order by recorded_at desc limit 1) h on true
					  where c.tag > :after and not (select practice from county where key = h.stands_in)
					    and (cast(:county as text) is null or h.stands_in = :county)
					    and (cast(:species as text) is null or k.species = :species)
					    and (cast(:tag as text) is null or c.tag = :tag)
					    and (cast(:south as numeric) is null or h.latitude between :south and :north)
					    and (cast(:title as text) is null
					      or exists (select from title_span where tree = c.id and to_at is null and title = :title))
					    and (cast(:condition as text) is null or :condition = coalesce((select r.condition
					      from condition_report r join condition_decision j on j.report = r.id
					      where r.tree = c.id and j.accepted and r.condition <> 'not-found'
					      order by coalesce(j.began_on, r.observed_on) desc, j.recorded_at desc limit 1), 'upright'))
					    and (cast(:first as date) is null and cast(:last as date) is null
					      or exists (select from score where tree = c.id and withdrawn_at is null and ends_on is null
					        and measured_on >= coalesce(cast(:first as date), '-infinity')
					        and measured_on <= coalesce(cast(:last as date), 'infinity')))
					    and exists (select from acceptance where tree = c.id)
					    and not exists (select from taking_off where tree = c.id)
					  order by c.tag offset 0) d
					join lateral (select * from location where tree = d.id order by recorded_at desc limit 1) l on true
					cross join lateral owners_consent(d.id, :now) w
					where kept_tree(d.id) = d.id and w.owners = w.to_listing order by d.tag limit :limit""")
			.param("now", SqlTime.of(this.clock.now()))
			.param("after", after)
			.param("county", filter.county(), Types.VARCHAR)
			.param("species", filter.species(), Types.VARCHAR)
			.param("tag", filter.tag(), Types.VARCHAR)
			.param("title", filter.title(), Types.VARCHAR)
			.param("condition", filter.condition(), Types.VARCHAR)
			.param("south", (box != null) ? box.south() - SHIFT : null, Types.NUMERIC)
			.param("north", (box != null) ? box.north() + SHIFT : null, Types.NUMERIC)
			.param("first", day(filter.measured().firstDay()), Types.DATE)
			.param("last", day(filter.measured().lastDay()), Types.DATE)
			.param("limit", limit)
			.query((row, number) -> candidate(row))
			.list();
	}

	/** What the database can't hold lies beyond all that was measured. */
	private static @Nullable LocalDate day(@Nullable LocalDate day) {
		if (day == null) {
			return null;
		}
		LocalDate first = LocalDate.of(1, 1, 1);
		LocalDate last = LocalDate.of(9999, 12, 31);
		return day.isBefore(first) ? first : day.isAfter(last) ? last : day;
	}

	private static Candidate candidate(ResultSet row) throws SQLException {
		Showing showing = Showings.of(row);
		return new Candidate(new Found(row.getObject("id", UUID.class), row.getString("tag")), showing.position(
				new Position(row.getDouble("latitude"), row.getDouble("longitude"), row.getDouble("accuracy_metres"))));
	}

	/**
	 * A tree that is asked for.
	 */
	record Found(UUID tree, String tag) {
	}

	private record Candidate(Found found, Optional<Position> shown) {

		boolean isIn(@Nullable Box box) {
			return box == null || this.shown.filter(box::holds).isPresent();
		}

	}

}
