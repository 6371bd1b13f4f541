package county.bigtree.registry.demo;

import java.net.InetAddress;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import county.bigtree.db.DatabaseUnavailable;
import county.bigtree.registry.county.CountyBody;
import county.bigtree.registry.county.FoundCounty;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.OpenDemoAccount;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.standing.CatchUp;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.boot.web.server.servlet.ConfigurableServletWebServerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Tells the demo's story into an empty register before the service is open, at the
 * instants of the story. A register that has the whole story is left as it is; any other
 * is refused. Serves the machine itself only: the demo's passwords are known to all.
 */
@Component
@ConditionalOnProperty("registry.demo")
class DemoReplay
		implements SmartInitializingSingleton, WebServerFactoryCustomizer<ConfigurableServletWebServerFactory> {

	private static final Logger logger = LoggerFactory.getLogger(DemoReplay.class);

	private static final String PASSWORD = "big trees in the demo county";

	private final DemoActions actions;

	private final Opening opening;

	private final RegisterClock clock;

	private final JsonMapper json;

	private final JdbcClient jdbc;

	DemoReplay(DemoActions actions, Opening opening, RegisterClock clock, JsonMapper json, JdbcClient jdbc) {
		this.actions = actions;
		this.opening = opening;
		this.clock = clock;
		this.json = json;
		this.jdbc = jdbc;
	}

	@Override
	public void customize(ConfigurableServletWebServerFactory factory) {
		factory.setAddress(InetAddress.getLoopbackAddress());
	}

	@Override
	public void afterSingletonsInstantiated() {
		List<JsonNode> story = story();
		long changes = this.jdbc.sql("select count(*) from change").query(Long.class).single();
		if (changes == 0) {
			tell(story);
		}
		else if (!told(story)) {
			throw new DatabaseUnavailable(
					"This register holds something other than the whole demo: start the demo with "
							+ "--registry.data-folder naming an empty folder.");
		}
	}

	/**
	 * Whether the register holds the story whole, which is told in order: whether it has
	 * what the last action recorded. When that was is told by the day on which the
	 * action's county was founded.
	 */
	private boolean told(List<JsonNode> actions) {
		JsonNode last = actions.get(actions.size() - 1);
		String key = last.path("county").stringValue();
		DemoStory story = new DemoStory(this.json, this.clock.now());
		for (JsonNode county : read("counties.json").path("counties")) {
			String zone = county.path("timeZone").stringValue();
			story.county(county.path("key").stringValue(), zone);
			if (county.path("key").stringValue().equals(key)) {
				String since = county.path("since").stringValue();
				return this.jdbc.sql("select recorded_at from change where county = ? and kind = 'county-founded'")
					.param(key)
					.query((row, number) -> row.getObject(1, OffsetDateTime.class)
						.atZoneSameInstant(ZoneId.of(zone))
						.toLocalDate())
					.optional()
					.filter((founded) -> isRecorded(key, story.instant(last, DemoStory.toldOn(since, founded))))
					.isPresent();
			}
		}
		return false;
	}

	private boolean isRecorded(String county, Instant at) {
		return this.jdbc.sql("select exists (select from change where county = ? and recorded_at >= ?)")
			.params(county, at.atOffset(ZoneOffset.UTC))
			.query(Boolean.class)
			.single();
	}

	private void tell(List<JsonNode> actions) {
		Instant began = Instant.now();
		logger.info("Telling the demo's story: {} actions", actions.size());
		DemoStory story = new DemoStory(this.json, this.clock.now());
		JsonNode counties = read("counties.json").path("counties");
		counties
			.forEach((county) -> story.county(county.path("key").stringValue(), county.path("timeZone").stringValue()));
		people(story, ZoneId.of(counties.get(0).path("timeZone").stringValue()));
		counties.forEach((county) -> found(story, county));
		for (JsonNode action : actions) {
			this.clock.replayAt(story.instant(action), () -> {
				this.actions.act(story, action);
				return action;
			});
		}
		counties.forEach((county) -> this.opening.catchUp().county(county.path("key").stringValue()));
		logger.info("The demo's story is told, in {} s", Instant.now().getEpochSecond() - began.getEpochSecond());
	}

	private void people(DemoStory story, ZoneId zone) {
		for (JsonNode person : read("people.json").path("people")) {
			List<CountyRole> roles = new ArrayList<>();
			person.path("roles")
				.forEach((role) -> roles
					.add(new CountyRole(role.path("county").isString() ? role.path("county").stringValue() : null,
							Role.valueOf(role.path("role").stringValue().toUpperCase(Locale.ROOT)))));
			story.person(person.path("account").stringValue(),
					this.opening.accounts()
						.open(person.path("email").stringValue(), person.path("credit").stringValue(), PASSWORD, roles,
								story.startOf(person.path("since").stringValue(), zone)));
		}
	}

	private void found(DemoStory story, JsonNode county) {
		ZoneId zone = ZoneId.of(county.path("timeZone").stringValue());
		CountyBody body = new CountyBody(county.path("key").stringValue(), county.path("name").stringValue(),
				county.path("state").stringValue(), zone.getId(), county.path("tagPrefix").stringValue(),
				county.path("boundary"), county.path("practice").booleanValue(), null);
		Actor administrator = new Actor(story.person("admin"), "R. Office", true, Map.of());
		this.clock.replayAt(story.startOf(county.path("since").stringValue(), zone), () -> {
			this.opening.founding().found(administrator, body);
			return body;
		});
	}

	private List<JsonNode> story() {
		return DemoFiles.text("story.jsonl")
			.lines()
			.filter((line) -> !line.isBlank())
			.map(this.json::readTree)
			.toList();
	}

	private JsonNode read(String file) {
		return this.json.readTree(DemoFiles.text(file));
	}

	/**
	 * What opens a register.
	 */
	@Component
	@ConditionalOnProperty("registry.demo")
	record Opening(FoundCounty founding, OpenDemoAccount accounts, CatchUp catchUp) {
	}

}
