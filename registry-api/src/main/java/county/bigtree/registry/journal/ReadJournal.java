package county.bigtree.registry.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads a county's journal: who changed what, when and why. Which trees a change concerns
 * and why it was made is told by the facts in its entry; where they stand in another
 * county's chain, by the entry there. Words that were erased are not told.
 */
@Service
public class ReadJournal {

	/** An import brings many trees at once; their number is always told. */
	static final int TREES_NAMED = 50;

	private static final String CHANGES = """
			with page as materialized (
			  select seq, id, recorded_at, kind, actor, convert_from(entry, 'UTF8')::jsonb as told
			  from change where county = :county and seq < :before
			    and recorded_at >= coalesce(cast(:from as timestamptz), '-infinity')
			    and recorded_at < coalesce(cast(:until as timestamptz), 'infinity') order by seq desc limit :limit),
			fact as materialized (
			  select p.seq, f.told ->> 'table' as fact_table, f.told -> 'row' as columns
			  from page p
			  left join change first on first.county = p.told ->> 'factsIn' and first.id = p.id
			  cross join lateral jsonb_array_elements(
			    coalesce(p.told -> 'facts', convert_from(first.entry, 'UTF8')::jsonb -> 'facts')) f(told)),
			concerned as (
			  select seq, (columns ->> 'id')::uuid as tree from fact where fact_table = 'tree'
			  union select seq, (columns ->> 'tree')::uuid from fact
			  union select seq, (columns ->> 'into_tree')::uuid from fact
			  union select seq, (columns ->> 'new_tree')::uuid from fact
			  union select seq, (columns ->> 'other_tree')::uuid from fact
			  union select f.seq, m.tree from fact f join measurement m on m.id = (f.columns ->> 'measurement')::uuid
			  union select f.seq, n.tree from fact f join nomination n on n.id = (f.columns ->> 'nomination')::uuid
			  union select f.seq, c.tree from fact f join condition_report c on c.id = (f.columns ->> 'report')::uuid
			  union select f.seq, r.tree from fact f join stem_ruling r on r.id = (f.columns ->> 'ruling')::uuid
			  union select f.seq, p.tree from fact f
			    join relocation_proposal p on p.id = (f.columns ->> 'proposal')::uuid
			  union select f.seq, h.tree from fact f join photo h on h.id = (f.columns ->> 'photo')::uuid
			  union select f.seq, v.tree from fact f join visit v on v.id = (f.columns ->> 'visit')::uuid
			  union select f.seq, unnest(array[g.tree, g.into_tree]) from fact f
			    join merge g on g.id = (f.columns ->> 'merge')::uuid
			  union select f.seq, m.tree from fact f join sign_off s on s.id = (f.columns ->> 'sign_off')::uuid
			    join measurement m on m.id = s.measurement),
			named as (
			  select c.seq, count(*) as tree_count, (array_agg(t.id order by t.tag))[1 : %1$d] as trees,
			    (array_agg(t.tag order by t.tag))[1 : %1$d] as tags
			  from concerned c join tree t on t.id = c.tree group by c.seq),
			explained as (
			  select f.seq, string_agg(distinct b.body, E'\\n') as reason
			  from fact f join text_body b on b.id = (f.columns ->> 'reason')::uuid group by f.seq)
			select p.seq, p.recorded_at, p.kind, w.credit_name, coalesce(n.tree_count, 0) as tree_count,
			  coalesce(n.trees, '{}') as trees, coalesce(n.tags, '{}') as tags, e.reason
			from page p left join person w on w.id = p.actor left join named n on n.seq = p.seq
			left join explained e on e.seq = p.seq order by p.seq desc""".formatted(TREES_NAMED);

	private final JdbcClient jdbc;

	ReadJournal(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The changes of a county, newest first.
	 * @param before only those with a lower number
	 * @param from only those recorded at that instant or later, or null
	 * @param until only those recorded before that instant, or null
	 */
	@Transactional(readOnly = true)
	public List<Recorded> of(String county, long before, @Nullable Instant from, @Nullable Instant until, int limit) {
		return this.jdbc.sql(CHANGES)
			.param("county", county)
			.param("before", before)
			.param("from", (from != null) ? SqlTime.of(from) : null, Types.TIMESTAMP_WITH_TIMEZONE)
			.param("until", (until != null) ? SqlTime.of(until) : null, Types.TIMESTAMP_WITH_TIMEZONE)
			.param("limit", limit)
			.query(ReadJournal::recorded)
			.list();
	}

	private static Recorded recorded(ResultSet row, int number) throws SQLException {
		UUID[] ids = (UUID[]) row.getArray("trees").getArray();
		String[] tags = (String[]) row.getArray("tags").getArray();
		List<Concerned> trees = new ArrayList<>();
		for (int index = 0; index < ids.length; index++) {
			trees.add(new Concerned(ids[index], tags[index]));
		}
		return new Recorded(row.getLong("seq"), SqlTime.get(row, "recorded_at"), row.getString("kind"),
				row.getString("credit_name"), row.getInt("tree_count"), List.copyOf(trees), row.getString("reason"));
	}

	/**
	 * A change as the journal has it.
	 *
	 * @param seq its number in the county
	 * @param who the credit name of the person who caused it, or null for the register
	 * itself
	 * @param treeCount how many trees it concerns
	 * @param trees the first of them by tag
	 * @param reason why, or null where nothing was said or the words were erased; several
	 * reasons stand in lines of their own
	 */
	public record Recorded(long seq, Instant recordedAt, String kind, @Nullable String who, int treeCount,
			List<Concerned> trees, @Nullable String reason) {
	}

	/**
	 * A tree that a change concerns.
	 */
	public record Concerned(UUID tree, String tag) {
	}

}
