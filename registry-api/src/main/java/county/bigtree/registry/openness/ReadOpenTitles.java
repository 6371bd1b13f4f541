package county.bigtree.registry.openness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
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
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads the titles of all counties that are not for practice, in the order in which they
 * were recognised.
 */
@Service
public class ReadOpenTitles {

	private static final int AT_ONCE = 1000;

	/** Of more it is not said how many they are. */
	private static final int COUNTED = 5000;

	private static final Instant FIRST = Instant.parse("0001-01-01T00:00:00Z");

	private static final Instant LAST = Instant.parse("9999-12-31T23:59:59Z");

	private static final String TITLES = """
			select s.id, s.county, c.name as county_name, s.species, p.scientific_name, p.common_name, s.tree, t.tag, s.title,
			  s.from_at, s.to_at, s.points, s.measured_on, s.began, s.ended,
			  (select count(*) from title_span o where o.county = s.county and o.species = s.species
			    and o.from_at = s.from_at and o.id <= s.id) as number,
			  l.latitude, l.longitude, l.accuracy_metres, l.shown, w.*
			from title_span s join county_now c on c.key = s.county join species p on p.key = s.species
			join tree t on t.id = s.tree
			join lateral (select * from location where tree = t.id order by recorded_at desc limit 1) l on true
			cross join lateral owners_consent(t.id, :now) w
			where not c.practice""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	ReadOpenTitles(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The first page of those asked for, which counts them.
	 */
	@Transactional(readOnly = true)
	public Page first(TitleFilter filter, int limit) {
		List<OpenTitle> found = find(filter, 0, Math.max(COUNTED, limit) + 1);
		return page(found, limit, (found.size() <= COUNTED) ? found.size() : null);
	}

	/**
	 * The page after one.
	 * @param after the last row already seen
	 * @param matched what the first page counted
	 */
	@Transactional(readOnly = true)
	public Page next(TitleFilter filter, long after, @Nullable Integer matched, int limit) {
		return page(find(filter, after, limit + 1), limit, matched);
	}

	private static Page page(List<OpenTitle> found, int limit, @Nullable Integer matched) {
		List<OpenTitle> shown = List.copyOf(found.subList(0, Math.min(found.size(), limit)));
		return new Page(shown, matched, (found.size() > limit) ? shown.get(limit - 1).row() : null);
	}

	/**
	 * The title with this id.
	 */
	@Transactional(readOnly = true)
	public Optional<OpenTitle> find(String id) {
		String[] parts = id.split("\\.", 3);
		if (parts.length < 3) {
			return Optional.empty();
		}
		return this.jdbc.sql(TITLES + " and s.county = :county and s.species = :species order by s.id")
			.param("now", SqlTime.of(this.clock.now()))
			.param("county", parts[0])
			.param("species", parts[1])
			.query((row, number) -> title(row))
			.list()
			.stream()
			.filter((title) -> title.id().equals(id))
			.findFirst();
	}

	private List<OpenTitle> find(TitleFilter filter, long after, int most) {
		List<OpenTitle> found = new ArrayList<>();
		boolean picky = filter.box() != null || filter.tag() != null;
		long last = after;
		while (found.size() < most) {
			int limit = picky ? AT_ONCE : Math.min(AT_ONCE, most - found.size());
			List<OpenTitle> page = rows(filter, last, limit);
			page.stream().filter((title) -> isAskedFor(title, filter)).forEach(found::add);
			if (page.size() < limit) {
				break;
			}
			last = page.get(page.size() - 1).row();
		}
		return found.subList(0, Math.min(found.size(), most));
	}

	private static boolean isAskedFor(OpenTitle title, TitleFilter filter) {
		Box box = filter.box();
		return (filter.tag() == null || filter.tag().equals(title.tag()))
				&& (box == null || title.shown().filter(box::holds).isPresent());
	}

	private List<OpenTitle> rows(TitleFilter filter, long after, int limit) {
		return this.jdbc.sql(TITLES + """
				 and s.id > :after and (cast(:county as text) is null or s.county = :county)
				  and (cast(:species as text) is null or s.species = :species)
				  and (cast(:title as text) is null or s.title = :title)
				  and s.from_at <= :to and coalesce(s.to_at, 'infinity') > :from
				order by s.id limit :limit""")
			.param("now", SqlTime.of(this.clock.now()))
			.param("after", after)
			.param("county", filter.county(), Types.VARCHAR)
			.param("species", filter.species(), Types.VARCHAR)
			.param("title", filter.title(), Types.VARCHAR)
			.param("from", SqlTime.of(within(filter.held().from(), FIRST)))
			.param("to", SqlTime.of(within(filter.held().to(), LAST)))
			.param("limit", limit)
			.query((row, number) -> title(row))
			.list();
	}

	/** What the database can't hold lies beyond all titles. */
	private static Instant within(@Nullable Instant instant, Instant open) {
		Instant wanted = (instant != null) ? instant : open;
		return wanted.isBefore(FIRST) ? FIRST : wanted.isAfter(LAST) ? LAST : wanted;
	}

	static OpenTitle title(ResultSet row) throws SQLException {
		Showing showing = Showings.of(row);
		boolean listed = showing.listed();
		Position exact = new Position(row.getDouble("latitude"), row.getDouble("longitude"),
				row.getDouble("accuracy_metres"));
		return new OpenTitle(row.getLong("id"), row.getInt("number"), row.getString("county"),
				row.getString("county_name"), row.getString("species"), row.getString("scientific_name"),
				row.getString("common_name"), listed ? row.getObject("tree", UUID.class) : null,
				listed ? row.getString("tag") : null, row.getString("title"), SqlTime.get(row, "from_at"),
				SqlTime.find(row, "to_at"), row.getBigDecimal("points"), row.getObject("measured_on", LocalDate.class),
				row.getString("began"), row.getString("ended"), showing.position(exact));
	}

	/**
	 * A page of titles.
	 *
	 * @param matched how many there are on all pages; null where they are too many to
	 * count
	 * @param next the row after which the next page begins; null where none follows
	 */
	public record Page(List<OpenTitle> titles, @Nullable Integer matched, @Nullable Long next) {
	}

}
