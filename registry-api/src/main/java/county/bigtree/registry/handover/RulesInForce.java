package county.bigtree.registry.handover;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.rules.RulebookJson;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * By what is decided: rulings on single trees, and the rulebooks with their reasons.
 */
@Component
@Order(8)
class RulesInForce implements OpenWork {

	private static final String RULINGS = """
			select t.tag, r.began_on as day, 'scored as ' || replace(r.form, '-', ' ')
			  || coalesce(', stem: ' || stem.body, '') || coalesce(', measured at: ' || at.body, '') as what,
			  why.body as reason
			from tree t
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			join lateral (select * from stem_ruling where tree = t.id order by recorded_at desc limit 1) r on true
			left join text_body stem on stem.id = r.scored_stem left join text_body at on at.id = r.measure_at
			left join text_body why on why.id = r.reason
			where l.stands_in = :county and kept_tree(t.id) = t.id
			union all
			select t.tag, null, 'not to be ranked', why.body from tree t
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			join lateral (select * from eligibility where tree = t.id order by recorded_at desc limit 1) e on not e.eligible
			left join text_body why on why.id = e.reason
			where l.stands_in = :county and kept_tree(t.id) = t.id
			order by tag, what""";

	private static final String RULEBOOKS = """
			select r.body::text as rules, why.body as reason from rulebook r left join text_body why on why.id = r.reason
			where r.county = ? order by r.effective_on desc, r.recorded_at desc""";

	private final JdbcClient jdbc;

	private final JsonMapper json;

	RulesInForce(JdbcClient jdbc, JsonMapper json) {
		this.jdbc = jdbc;
		this.json = json;
	}

	@Override
	public List<Section> of(Actor coordinator, String county) {
		List<Item> rulings = this.jdbc.sql(RULINGS).param("county", county).query(RulesInForce::ruling).list();
		List<Item> books = this.jdbc.sql(RULEBOOKS).param(county).query(this::rulebook).list();
		return List.of(new Section("Rulings on single trees", rulings, "None."),
				new Section("Rulebooks, the latest first, and from when", books, "None."));
	}

	private static Item ruling(ResultSet row, int number) throws SQLException {
		String reason = row.getString("reason");
		return new Item(row.getString("tag"), row.getObject("day", LocalDate.class),
				row.getString("what") + ((reason != null) ? ". Because: " + reason : ""));
	}

	private Item rulebook(ResultSet row, int number) throws SQLException {
		RulebookJson book = this.json.readValue(row.getString("rules"), RulebookJson.class);
		StringBuilder text = new StringBuilder();
		RulebookJson.Tie tie = book.tieRule();
		if (tie != null) {
			text.append("ties: ").append(tie.kind()).append((tie.n() != null) ? " " + tie.n() : "").append("; ");
		}
		append(text, "a measurement is current for %s years", book.currencyYears());
		append(text, "then its holder %s", book.whenStale());
		append(text, "sign-offs needed: %s", book.requiredSignOffs());
		append(text, "for a title: %s", book.requiredSignOffsForTitle());
		yes(text, "a title changes only with a coordinator's yes", book.titleNeedsCoordinator());
		words(text, "titles only by figures taken with: %s", book.titleMethods());
		if (book.photosRequired() != null && book.photosRequired() > 0) {
			append(text, "passed photos before a sign-off gives a title: %s", book.photosRequired());
		}
		words(text, "only these species hold titles: %s", book.eligibleSpecies());
		yes(text, "a verifier brings readings of their own", book.checkReadingsRequired());
		append(text, "days to answer what is asked: %s", book.answerDays());
		append(text, "filed after %s months, it counts by a coordinator's word alone", book.oldestFilingMonths());
		String reason = row.getString("reason");
		return new Item(null, book.effectiveOn(),
				text.append((reason != null) ? "because: " + reason : "no reason is on record").toString());
	}

	private static void yes(StringBuilder text, String words, @Nullable Boolean value) {
		if (Boolean.TRUE.equals(value)) {
			text.append(words).append("; ");
		}
	}

	private static void words(StringBuilder text, String words, @Nullable List<String> values) {
		if (values != null && !values.isEmpty()) {
			append(text, words, String.join(", ", values));
		}
	}

	private static void append(StringBuilder text, String words, @Nullable Object value) {
		if (value != null) {
			text.append(words.formatted(value)).append("; ");
		}
	}

}
