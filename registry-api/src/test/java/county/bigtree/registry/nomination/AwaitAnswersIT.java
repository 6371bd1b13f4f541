package county.bigtree.registry.nomination;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A returned nomination that nobody answers, by a clock a hundred days back. Sixty days
 * to answer and a fortnight's notice: common practice, no source.
 */
@RegistryTest
class AwaitAnswersIT {

	private static final ZoneId ZONE = ZoneId.of("America/New_York");

	private static final Instant START = Instant.now().minus(100, ChronoUnit.DAYS);

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private AwaitAnswers answers;

	@Autowired
	private RegisterClock clock;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void remindsOnceAndThenLetsItLapseOnTheDayThatTheReminderNamed() throws Exception {
		TestTrees.Filed filed = returned("lapseton", "LPA");
		TestPerson coordinator = this.people.coordinator("lapseton");
		LocalDate lapsesOn = dayAfter(60);
		assertThat(awaitAfter(45, filed)).isNull();
		assertThat(awaitAfter(46, filed)).isEqualTo(AwaitAnswers.Done.REMINDED);
		assertThat(awaitAfter(47, filed)).isNull();
		after(48, () -> {
			this.trees.ask(get("/api/v1/nominations").param("mine", "true"), filed.filer())
				.andExpect(jsonPath("$.items[0].lapsesOn").value(lapsesOn.toString()));
			this.trees.ask(get("/api/v1/counties/lapseton/queue"), coordinator)
				.andExpect(jsonPath("$.items[0].status").value("returned"))
				.andExpect(jsonPath("$.items[0].lapsesOn").value(lapsesOn.toString()));
			return move(filed, "{\"move\": \"lapse\"}", coordinator, 409);
		});
		assertThat(awaitAfter(59, filed)).isNull();
		assertThat(awaitAfter(60, filed)).isEqualTo(AwaitAnswers.Done.LAPSED);
		assertThat(awaitAfter(61, filed)).isNull();
		this.trees.ask(get("/api/v1/nominations/" + filed.nomination()), filed.filer())
			.andExpect(jsonPath("$.status").value("declined"))
			.andExpect(jsonPath("$.lapsesOn").isEmpty())
			.andExpect(jsonPath("$.moves[-1:].move").value("lapse"))
			.andExpect(jsonPath("$.moves[-1:].byWhom").value((Object) null));
		String story = this.trees.ask(get("/api/v1/trees/" + filed.tree() + "/story"), coordinator)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(JsonPath.<List<String>>read(story, "$.items[*].facts[?(@.kind =~ /nomination-(re|la).*/)].sentence"))
			.hasSize(3)
			.contains("The register let the nomination of LPA-0001 lapse unanswered.");
		nothingIsWrongWith("lapseton");
	}

	@Test
	void forgetsTheReminderOnceItIsAnswered() throws Exception {
		TestTrees.Filed filed = returned("answerton", "LPB");
		TestPerson coordinator = this.people.coordinator("answerton");
		awaitAfter(50, filed);
		after(51, () -> move(filed, "{\"move\": \"answer\", \"reason\": \"the left fork\"}", filed.filer(), 200));
		assertThat(awaitAfter(70, filed)).isNull();
		after(71, () -> move(filed, "{\"move\": \"return\", \"reason\": \"and its height?\"}", coordinator, 200));
		after(72,
				() -> this.trees.ask(get("/api/v1/nominations/" + filed.nomination()), filed.filer())
					.andExpect(jsonPath("$.status").value("returned"))
					.andExpect(jsonPath("$.lapsesOn").isEmpty()));
		assertThat(awaitAfter(99, filed)).isNull();
		nothingIsWrongWith("answerton");
	}

	@Test
	void putsOffTheLapseWhereTheRegisterSleptOverTheReminder() throws Exception {
		TestTrees.Filed filed = returned("sleepton", "LPC");
		assertThat(awaitAfter(80, filed)).isEqualTo(AwaitAnswers.Done.REMINDED);
		assertThat(awaitAfter(93, filed)).isNull();
		assertThat(awaitAfter(94, filed)).isEqualTo(AwaitAnswers.Done.LAPSED);
		nothingIsWrongWith("sleepton");
	}

	private TestTrees.Filed returned(String county, String prefix) throws Exception {
		return after(0, () -> {
			this.trees.county(county, prefix);
			TestTrees.Filed filed = this.trees.nominate(county, this.people.volunteer(county), "quercus-alba",
					TestTrees.measurement(100, "2020-05-02"));
			move(filed, "{\"move\": \"return\", \"reason\": \"which fork?\"}", this.people.coordinator(county), 200);
			return filed;
		});
	}

	private String move(TestTrees.Filed filed, String move, TestPerson person, int status) throws Exception {
		return this.trees.decide("/api/v1/nominations/" + filed.nomination(), "/moves", move, person)
			.andExpect(status().is(status))
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	private AwaitAnswers.@Nullable Done awaitAfter(int days, TestTrees.Filed filed) throws Exception {
		List<AwaitAnswers.Done> done = new ArrayList<>();
		after(days, () -> {
			AwaitAnswers.Done one = this.answers.await(UUID.fromString(filed.nomination()));
			if (one != null) {
				done.add(one);
			}
			return done;
		});
		return done.isEmpty() ? null : done.get(0);
	}

	/** So many days after the start, at the same hour of the county. */
	private <T> T after(int days, Callable<T> work) throws Exception {
		Instant then = START.atZone(ZONE).plusDays(days).toInstant();
		return this.clock.replayAt(then, () -> {
			try {
				return work.call();
			}
			catch (Exception ex) {
				throw new IllegalStateException(ex);
			}
		});
	}

	private static LocalDate dayAfter(int days) {
		return LocalDate.ofInstant(START, ZONE).plusDays(days);
	}

	private void nothingIsWrongWith(String county) {
		List<String> found = new ArrayList<>();
		this.checks.forEach((check) -> check.look(new Findings(1000, found::add, (looked) -> {
		})));
		assertThat(found).noneMatch((sentence) -> sentence.contains(county));
	}

}
