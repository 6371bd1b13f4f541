package county.bigtree.registry.handover;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

import county.bigtree.registry.naming.Names;
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

	private final Prose prose;

	RulesInForce(JdbcClient jdbc, JsonMapper json, Prose prose) {
		this.jdbc = jdbc;
		this.json = json;
		this.prose = prose;
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
		RulebookJson book = RulebookJson
			.from(this.json.readValue(row.getString("rules"), RulebookJson.class).toRulebook());
		StringBuilder text = new StringBuilder();
		RulebookJson.Tie tie = Objects.requireNonNull(book.tieRule());
		append(text, "rules.said.tie." + tie.kind(), tie.n(), tie.k(), tie.atMost());
		append(text, "rules.said.currency", book.currencyYears(), this.prose.say("rules.stale." + book.whenStale()));
		append(text, "rules.said.sighting", book.sightingYears(), book.remeasureWithin());
		append(text, "rules.said.sign-offs", book.requiredSignOffs(), book.requiredSignOffsForTitle());
		if (Boolean.TRUE.equals(book.titleNeedsCoordinator())) {
			append(text, "rules.said.coordinator");
		}
		if (Boolean.TRUE.equals(book.checkReadingsRequired())) {
			append(text, "rules.said.readings");
		}
		if (book.photosRequired() != null && book.photosRequired() > 0) {
			append(text, "rules.said.photos", book.photosRequired());
		}
		methods(text, book);
		species(text, book);
		append(text, "rules.said.filing", book.oldestFilingMonths(), book.answerDays());
		String reason = row.getString("reason");
		return new Item(null, book.effectiveOn(),
				text.append((reason != null) ? "Because: " + reason : "No reason is on record.").toString());
	}

	private void methods(StringBuilder text, RulebookJson book) {
		List<String> methods = Objects.requireNonNull(book.titleMethods());
		if (!methods.isEmpty()) {
			append(text, "handover.rules.methods",
					methods.stream()
						.map((one) -> this.prose.within("method." + one))
						.collect(Collectors.joining(", ")));
		}
	}

	private void species(StringBuilder text, RulebookJson book) {
		List<String> species = book.eligibleSpecies();
		if (species != null) {
			Names names = this.prose.names(species);
			append(text, "handover.rules.species",
					species.stream().map(names::species).sorted().collect(Collectors.joining(", ")));
		}
	}

	private void append(StringBuilder text, String message, @Nullable Object... about) {
		text.append(this.prose.say(message, about)).append(' ');
	}

}
