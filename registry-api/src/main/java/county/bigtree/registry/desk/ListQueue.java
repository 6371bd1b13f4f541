package county.bigtree.registry.desk;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.domain.standing.Title;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.SurpassLeaders;
import county.bigtree.registry.standing.WeighWaiting;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lists what waits for a county: its nominations that are not decided, and the
 * measurements and condition reports on trees that stand there. A measurement that came
 * with a nomination waits as that nomination until it is accepted. Trees that were taken
 * off the books wait for nothing. Letters wait until it is told what became of them.
 */
@Service
public class ListQueue {

	private static final String ARRIVED = "with arrived as materialized (select tree from location where stands_in = :county and county <> :county)";

	private static final String NOMINATIONS = """
			select 'nomination' as kind, id, tree, measurement, status, recorded_at as since from nomination
			where (county = :county or tree in (select tree from arrived)) and status in ('submitted', 'under-review', 'returned')""";

	/**
	 * Those filed that count neither yet nor any more for reasons that are final. Most of
	 * a register has a score and so waits for nothing: those are left out before anything
	 * is asked of them.
	 */
	private static final String MEASUREMENTS = """
			select 'measurement', m.id, measurement_tree(m.id, m.tree), m.id,
			  case when w.denied then 'not-confirmed' else coalesce(o.to_status, 'filed') end, m.recorded_at
			from measurement m
			cross join lateral (
			  select count(*) filter (where s.verdict = 'confirmed' and not r.revoked) as agreeing,
			    coalesce(bool_or(s.verdict = 'not-confirmed' and not r.revoked), false) as denied,
			    coalesce(bool_or(brought_full(s.own_measurement)), false) as replaced
			  from sign_off s cross join lateral (select exists (select from revocation where sign_off = s.id) as revoked) r
			  where s.measurement = m.id) w
			left join lateral (select to_status from measurement_move where measurement = m.id
			  order by recorded_at desc limit 1) o on true
			where m.id in (select f.id from measurement f where f.county = :county and f.basis = 'filed'
			      and not exists (select from score where measurement = f.id and withdrawn_at is null)
			    union select o.id from arrived a join measurement o on o.tree = a.tree where o.basis = 'filed'
			    union select g.measurement from arrived a join assignment g on g.tree = a.tree)
			  and m.basis = 'filed' and not w.replaced and o.to_status is distinct from 'withdrawn'
			  and (w.denied or w.agreeing < coalesce((select required from sign_off_requirement where measurement = m.id), 1))
			  and not exists (select from setting_aside where measurement = m.id)
			  and not exists (select from nomination where measurement = m.id and status <> 'accepted')""";

	private static final String REPORTS_HERE = """
			r.id in (select id from condition_report where county = :county
			    union select o.id from arrived a join condition_report o on o.tree = a.tree)""";

	private static final String REPORTS = """
			select 'condition-report', r.id, r.tree, null::uuid, r.condition, r.recorded_at from condition_report r
			where not exists (select from condition_decision where report = r.id) and\s""" + REPORTS_HERE;

	/**
	 * Trees looked for in vain twice since they were last seen, and not known to be gone.
	 */
	private static final String NOT_FOUND = """
			select 'not-found', (array_agg(r.id order by r.recorded_at))[2], k.tree, null, 'not-found',
			  (array_agg(r.recorded_at order by r.recorded_at))[2]
			from condition_report r cross join lateral (select kept_tree(r.tree) as tree) k
			left join condition_decision d on d.report = r.id
			left join lateral (
			  select c.condition, max(c.observed_on) over () as seen_on
			  from condition_report c join condition_decision x on x.report = c.id
			  where c.tree in (select tree_family(k.tree, 'infinity')) and x.accepted and c.condition <> 'not-found'
			  order by coalesce(x.began_on, c.observed_on) desc, x.recorded_at desc limit 1) last on true
			left join score s on s.tree = k.tree and s.withdrawn_at is null and s.ends_on is null
			where r.condition = 'not-found' and d.accepted is distinct from false
			  and coalesce(last.condition, 'upright') in ('upright', 'declining', 'damaged')
			  and r.observed_on > greatest(last.seen_on, s.seen_on, '-infinity') and\s""" + REPORTS_HERE
			+ " group by k.tree having count(*) >= 2";

	/**
	 * They wait in both counties: either may have to answer.
	 */
	private static final String RELOCATIONS = """
			select 'relocation', p.id, p.tree, null, 'waiting', p.recorded_at from relocation_proposal p
			where :county in (p.from_county, p.to_county)
			  and not exists (select from relocation_answer where proposal = p.id)""";

	/**
	 * Sign-offs that would change who holds a title, and wait for a coordinator's yes.
	 */
	private static final String SIGN_OFFS = """
			select 'sign-off', s.id, measurement_tree(m.id, m.tree), coalesce(o.id, m.id), s.verdict, s.recorded_at
			from sign_off_deferral d join sign_off s on s.id = d.sign_off join measurement m on m.id = s.measurement
			left join measurement o on o.id = s.own_measurement and brought_full(o.id)
			where (d.county = :county or measurement_tree(m.id, m.tree) in (select tree from arrived))
			  and sign_off_waits(s.id) and not exists (select from revocation where sign_off = s.id)
			  and not exists (select from setting_aside where measurement = m.id)""";

	/**
	 * Photos on which nobody has decided; those of sheets of paper wait for nothing.
	 */
	private static final String PHOTOS = """
			select 'photo', p.id, photo_tree(p.measurement, p.tree), null, p.shows, p.recorded_at from photo p
			left join lateral (select decision from photo_decision where photo = p.id order by recorded_at desc limit 1) d on true
			where (p.county = :county or photo_tree(p.measurement, p.tree) in (select tree from arrived)) and p.shows <> 'sheet'
			  and coalesce(d.decision, 'take-back') = 'take-back' and not exists (select from photo_erasure where photo = p.id)""";

	private static final String QUEUE = ARRIVED + ", waiting as (" + NOMINATIONS + " union all " + MEASUREMENTS
			+ " union all " + REPORTS + " union all " + NOT_FOUND + " union all " + RELOCATIONS + " union all "
			+ SIGN_OFFS + " union all " + PHOTOS
			+ """
					)
					select w.kind, w.id, w.measurement, w.status, w.since, t.id as tree, t.tag, r.points, p.title, a.lapses_on,
					  coalesce(f.checks @> '[{"extraordinary": true}]', false) as extraordinary,
					  ranked_as(i.species, 'infinity') as species, b.stands_in
					from waiting w
					join lateral (select stands_in from location where tree = w.tree order by recorded_at desc limit 1) l
					  on w.kind = 'relocation' or l.stands_in = :county
					join tree t on t.id = kept_tree(w.tree)
					join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
					join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) b on true
					left join lateral (select points from reduction where measurement = w.measurement
					  order by version desc limit 1) r on true
					left join lateral (select case w.kind when 'nomination' then nomination_lapses_on(w.id) end as lapses_on) a on true
					left join measurement f on f.id = w.measurement
					left join title_span p on p.tree = t.id and p.to_at is null and w.kind <> 'photo'
					where not exists (select from taking_off where tree = w.tree)""";

	private static final String LETTERS = """
			select w.id, t.id as tree, t.tag, ranked_as(i.species, 'infinity') as species, w.about, w.recorded_at
			from letter w left join tree t on t.id = kept_tree(w.tree)
			left join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
			where w.county = :county and not exists (select from letter_outcome where letter = w.id)""";

	private final JdbcClient jdbc;

	private final WeighWaiting weigh;

	private final SurpassLeaders surpass;

	ListQueue(JdbcClient jdbc, WeighWaiting weigh, SurpassLeaders surpass) {
		this.jdbc = jdbc;
		this.weigh = weigh;
		this.surpass = surpass;
	}

	/**
	 * All that waits for a county that was brought up to today, in the order of
	 * {@link Waiting#ORDER}.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public List<Waiting> of(String county) {
		List<Found> found = this.jdbc.sql(QUEUE).param("county", county).query(ListQueue::found).list();
		List<WeighWaiting.Waits> waiting = found.stream().flatMap((one) -> one.waits().stream()).toList();
		Map<UUID, Title> titles = this.weigh.titles(waiting);
		Map<UUID, Double> largest = this.surpass.of(waiting);
		return Stream
			.concat(found.stream()
				.map((one) -> one.waiting(one.waits().map((waits) -> titles.get(waits.measurement())),
						one.waits().map((waits) -> largest.get(waits.measurement())))),
					letters(county).stream())
			.sorted(Waiting.ORDER)
			.toList();
	}

	/**
	 * How much waits for a county and since when, letters aside.
	 */
	@Transactional(readOnly = true)
	public Load load(String county) {
		return this.jdbc.sql("select count(*) as waiting, min(since) as since from (" + QUEUE + ") queue")
			.param("county", county)
			.query((row, number) -> new Load(row.getInt("waiting"),
					(row.getObject("since") != null) ? SqlTime.get(row, "since") : null))
			.single();
	}

	private List<Waiting> letters(String county) {
		return this.jdbc.sql(LETTERS)
			.param("county", county)
			.query((row, number) -> new Waiting("letter", row.getObject("id", UUID.class),
					row.getObject("tree", UUID.class), row.getString("tag"), row.getString("species"),
					row.getString("about"), SqlTime.get(row, "recorded_at"), null, null, null, null, false, null))
			.list();
	}

	private static Found found(ResultSet row, int number) throws SQLException {
		String title = row.getString("title");
		return new Found(row.getString("kind"), row.getObject("id", UUID.class), row.getObject("tree", UUID.class),
				row.getString("tag"), new BookKey(row.getString("stands_in"), row.getString("species")),
				row.getString("status"), SqlTime.get(row, "since"), row.getObject("measurement", UUID.class),
				row.getBigDecimal("points"), (title != null) ? Title.of(title) : null, row.getBoolean("extraordinary"),
				row.getObject("lapses_on", LocalDate.class));
	}

	/**
	 * What waits for a county.
	 *
	 * @param since of the oldest; null where nothing waits
	 */
	public record Load(int waiting, @Nullable Instant since) {
	}

	private record Found(String kind, UUID id, UUID tree, String tag, BookKey book, String status, Instant since,
			@Nullable UUID measurement, @Nullable BigDecimal points, @Nullable Title title, boolean extraordinary,
			@Nullable LocalDate lapsesOn) {

		/** To be weighed, where a measurement waits that has points. */
		Optional<WeighWaiting.Waits> waits() {
			UUID waiting = this.measurement;
			BigDecimal of = this.points;
			return (waiting == null || of == null) ? Optional.empty()
					: Optional.of(new WeighWaiting.Waits(this.book, this.tree, waiting, of));
		}

		Waiting waiting(Optional<Title> wouldHold, Optional<Double> largestProbability) {
			return new Waiting(this.kind, this.id, this.tree, this.tag, this.book.species(), this.status, this.since,
					this.points, wouldHold.orElse(null), largestProbability.orElse(null), this.title,
					this.extraordinary, this.lapsesOn);
		}

	}

}
