package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The book table.
 */
@Component
class Books {

	private final JdbcClient jdbc;

	Books(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Optional<Book> find(BookKey key) {
		return this.jdbc
			.sql("select seq, trees, caught_up_at, next_event_at from book where county = ? and species = ?")
			.params(key.county(), key.species())
			.query((row, number) -> new Book(key, row.getLong("seq"), row.getInt("trees"),
					SqlTime.get(row, "caught_up_at"), SqlTime.find(row, "next_event_at")))
			.optional();
	}

	/**
	 * Whether time has something to do in a book of the county now.
	 */
	boolean anyDue(String county, RegisterClock clock) {
		return this.jdbc.sql("""
				select exists (select from book
				  where county = :county and next_event_at <= coalesce(:now, clock_timestamp()))""")
			.param("county", county)
			.param("now", clock.orDatabaseClock())
			.query(Boolean.class)
			.single();
	}

	/**
	 * The books of a county that time has something to do in, by the instant.
	 */
	List<BookKey> due(String county, Instant through) {
		return this.jdbc.sql("select species from book where county = ? and next_event_at <= ? order by species")
			.params(county, SqlTime.of(through))
			.query(String.class)
			.list()
			.stream()
			.map((species) -> new BookKey(county, species))
			.toList();
	}

	/**
	 * Moves a book on to the instant: a new version, its number of trees changed, and the
	 * next event computed.
	 */
	void advance(BookKey key, Instant at, int treesAdded, CountyRules rules) {
		Instant next = nextEvent(key, at, rules);
		this.jdbc.sql("""
				insert into book (county, species, seq, trees, caught_up_at, next_event_at)
				values (:county, :species, 1, :added, :at, :next)
				on conflict (county, species) do update set seq = book.seq + 1, trees = book.trees + :added,
				  caught_up_at = :at, next_event_at = :next""")
			.param("county", key.county())
			.param("species", key.species())
			.param("added", treesAdded)
			.param("at", SqlTime.of(at))
			.param("next", (next != null) ? SqlTime.of(next) : null, java.sql.Types.TIMESTAMP_WITH_TIMEZONE)
			.update();
	}

	/**
	 * Makes sure that all books of a county are looked at again at the instant.
	 */
	void expect(String county, Instant event) {
		this.jdbc.sql("update book set next_event_at = least(next_event_at, :event) where county = :county")
			.param("event", SqlTime.of(event))
			.param("county", county)
			.update();
	}

	/**
	 * When time or a rulebook will next change a book after the instant, or null.
	 */
	@Nullable Instant nextEvent(BookKey key, Instant at, CountyRules rules) {
		return Stream.concat(rules.nextTurn(at).stream(), nextTurningDay(key).map(rules::startOf).stream())
			.min(Instant::compareTo)
			.orElse(null);
	}

	/**
	 * Every book of a county, also those that should be there since they have scores.
	 */
	List<BookKey> all(String county) {
		return this.jdbc.sql("""
				select county, species from book where county = :county
				union select county, species from score where county = :county order by 1, 2""")
			.param("county", county)
			.query(BookKey.class)
			.list();
	}

	private Optional<LocalDate> nextTurningDay(BookKey key) {
		return this.jdbc.sql("""
				select turns_on from score where county = ? and species = ? and withdrawn_at is null and ends_on is null
				  and turns_on is not null order by turns_on limit 1""")
			.params(key.county(), key.species())
			.query(LocalDate.class)
			.optional();
	}

}
