package county.bigtree.registry.handover;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.rules.RulesReader;

import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What the public wrote that nobody has answered, and owners' consents that will end.
 * Contacts are not told here: opening one is noted, and is done letter by letter.
 */
@Component
@Order(3)
class LettersAndConsents implements OpenWork {

	private static final int MONTHS_AHEAD = 12;

	private static final String CONSENTS = """
			select t.tag, c.until_on, c.purpose from tree_owner o join tree t on t.id = o.tree
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			join (select distinct on (owner, purpose) * from consent order by owner, purpose, recorded_at desc) c
			  on c.owner = o.id
			where l.stands_in = :county and c.given and c.until_on between :today and :last
			  and not exists (select from owner_end where owner = o.id)
			order by c.until_on, t.tag, c.purpose""";

	private static final String LETTERS = """
			select t.tag, l.answer_by, l.about, b.body from letter l left join tree t on t.id = l.tree
			left join text_body b on b.id = l.words
			where l.county = :county and not exists (select from letter_outcome where letter = l.id)
			order by l.answer_by, l.id""";

	private final JdbcClient jdbc;

	private final RulesReader rules;

	private final RegisterClock clock;

	private final Prose prose;

	LettersAndConsents(JdbcClient jdbc, RulesReader rules, RegisterClock clock, Prose prose) {
		this.jdbc = jdbc;
		this.rules = rules;
		this.clock = clock;
		this.prose = prose;
	}

	@Override
	public List<Section> of(Actor coordinator, String county) {
		Instant now = this.clock.now();
		LocalDate today = this.rules.get(county).day(now);
		List<Item> letters = this.jdbc.sql(LETTERS).param("county", county).query(this::letter).list();
		List<Item> consents = this.jdbc.sql(CONSENTS)
			.param("county", county)
			.param("today", today)
			.param("last", today.plusMonths(MONTHS_AHEAD))
			.query(this::consent)
			.list();
		return List.of(new Section("Letters without an outcome, and by when to answer", letters, "None waits."),
				new Section("Owners' consents that end within a year, and their last day", consents, "None ends."));
	}

	private Item letter(ResultSet row, int number) throws SQLException {
		String words = row.getString("body");
		return new Item(row.getString("tag"), row.getObject("answer_by", LocalDate.class),
				this.prose.say("desk.letter.about." + row.getString("about")) + ": "
						+ ((words != null) ? words : "the words were erased"));
	}

	private Item consent(ResultSet row, int number) throws SQLException {
		return new Item(row.getString("tag"), row.getObject("until_on", LocalDate.class),
				"consent to " + this.prose.say("owners.purpose." + row.getString("purpose")));
	}

}
