package county.bigtree.registry.notice;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import com.icegreen.greenmail.util.GreenMail;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import jakarta.mail.internet.MimeMessage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What is told to whom, when, and how often, by a mail server of the test's own
 * (GreenMail). No outside source for who is told what; that a mail waits for the commit,
 * and comes at least once, is what an outbox is for.
 */
@RegistryTest
class NoticesIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MailRoom mails;

	@Autowired
	private CalendarNotices calendar;

	@Autowired
	private TellAdministrators tell;

	@Autowired
	private Outbox outbox;

	@Autowired
	private WriteLetter write;

	@Autowired
	private NoticeSettings settings;

	@Autowired
	private RegisterClock clock;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	private final GreenMail server = MailRoom.server();

	@BeforeEach
	void clear() {
		this.mails.clear();
	}

	@AfterEach
	void stop() {
		this.server.stop();
	}

	@Test
	void tellsWhoFiledOfEachStepOnce() throws Exception {
		this.trees.county("tellingland", "NTF");
		TestPerson coordinator = this.people.coordinator("tellingland");
		TestTrees.Filed filed = file("tellingland", 100);
		move(filed, "{\"move\": \"return\", \"reason\": \"Which fork?\"}", coordinator);
		move(filed, "{\"move\": \"answer\"}", filed.filer());
		this.trees.signOff(filed.measurement(), this.people.verifier("tellingland"), CONFIRMED)
			.andExpect(status().isCreated());
		SendNotices sender = this.mails.sender(this.server);
		sender.run();
		sender.run();
		assertThat(MailRoom.subjects(this.server, filed.filer())).containsExactlyInAnyOrder(
				"Received: your nomination of NTF-0001, white oak", "A question about NTF-0001, white oak",
				"On the books: NTF-0001, white oak", "Champion: NTF-0001, white oak");
		assertThat(MailRoom.to(this.server, coordinator)).isEmpty();
		assertThat(raw(this.server)).doesNotContain("Which fork");
	}

	@Test
	void tellsAdministratorsOfTheServiceItself() throws Exception {
		this.trees.county("serviceland", "NTV");
		TestPerson administrator = this.people.administrator();
		TestPerson coordinator = this.people.coordinator("serviceland");
		new TransactionTemplate(this.transactions).executeWithoutResult((status) -> {
			for (int again = 0; again < 2; again++) {
				this.tell.queue(NoticeKind.UPKEEP_WEEK, "service:2090-01-02", "well", this.clock.now());
				this.tell.queue(NoticeKind.UPKEEP_TROUBLE, "a disk of this test", "disk-full", this.clock.now());
			}
		});
		SendNotices sender = this.mails.sender(this.server);
		while (sender.run() > 0) {
			// There are more administrators in a register of tests than go in one run.
		}
		assertThat(MailRoom.subjects(this.server, administrator)).containsExactlyInAnyOrder("The register: all is well",
				"The register: a disk is nearly full");
		assertThat(MailRoom.to(this.server, coordinator)).isEmpty();
		MimeMessage week = MailRoom.to(this.server, administrator)
			.stream()
			.filter((mail) -> MailRoom.subject(mail).endsWith("well"))
			.findFirst()
			.orElseThrow();
		assertThat(MailRoom.part(week, "text/plain")).contains("archive was ", "restored on trial",
				"You get this because you are an administrator of this register.", "/desk/upkeep");
	}

	@Test
	void tellsWhoLosesATitleAndWhoFoundTheTree() throws Exception {
		this.trees.county("losingland", "NTG");
		TestTrees.Filed first = this.trees.standing("losingland", 100, "2026-05-02");
		TestPerson finder = this.people.volunteer("losingland");
		TestTrees.Filed second = fileFor(finder, "losingland", 140);
		this.trees.signOff(second.measurement(), this.people.verifier("losingland"), CONFIRMED)
			.andExpect(status().isCreated());
		this.mails.sender(this.server).run();
		assertThat(MailRoom.subjects(this.server, first.filer())).contains("No longer champion: NTG-0001, white oak");
		assertThat(MailRoom.subjects(this.server, second.filer())).contains("Champion: NTG-0002, white oak");
		assertThat(MailRoom.subjects(this.server, finder))
			.containsExactlyInAnyOrder("On the books: NTG-0002, white oak", "Champion: NTG-0002, white oak");
	}

	@Test
	void tellsWhoIsToDoSomething() throws Exception {
		this.trees.county("handedland", "NTH");
		TestPerson coordinator = this.people.coordinator("handedland");
		TestPerson verifier = this.people.verifier("handedland");
		TestTrees.Filed filed = file("handedland", 100);
		move(filed, "{\"move\": \"assign\", \"verifier\": \"" + verifier.id() + "\"}", coordinator);
		this.trees.ask(post("/api/v1/visits").content("""
				{"tree": "%s", "purpose": "sign-off", "verifier": "%s", "notes": "ask for the key at the mill"}"""
			.formatted(filed.tree(), verifier.id())), coordinator).andExpect(status().isCreated());
		this.trees
			.ask(post("/api/v1/visits").content("{\"tree\": \"%s\", \"purpose\": \"doubt\"}".formatted(filed.tree())),
					verifier)
			.andExpect(status().isCreated());
		this.mails.sender(this.server).run();
		assertThat(MailRoom.subjects(this.server, verifier)).containsExactlyInAnyOrder(
				"To be verified by you: NTH-0001, white oak", "A visit for you: NTH-0001, white oak");
		assertThat(raw(this.server)).doesNotContain("the mill");
	}

	@Test
	void tellsWhatBecameOfARemeasurementAndAReport() throws Exception {
		this.trees.county("stepland", "NTI");
		TestTrees.Filed filed = this.trees.standing("stepland", 100, "2026-05-02");
		TestPerson volunteer = this.people.volunteer("stepland");
		String answer = this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(101, "2026-06-02")), volunteer)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees
			.signOff(JsonPath.read(answer, "$.id"), this.people.verifier("stepland"),
					"{\"verdict\": \"not-confirmed\", \"remarks\": \"another stem\"}")
			.andExpect(status().isCreated());
		String report = this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/condition-reports")
				.content("{\"condition\": \"declining\", \"observedOn\": \"2026-06-10\"}"), volunteer)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees
			.decide("/api/v1/condition-reports/" + JsonPath.read(report, "$.id"), "/decision", "{\"accept\": true}",
					this.people.coordinator("stepland"))
			.andExpect(status().isOk());
		this.mails.sender(this.server).run();
		assertThat(MailRoom.subjects(this.server, volunteer)).containsExactlyInAnyOrder(
				"Received: your measurement of NTI-0001, white oak",
				"Not confirmed: your measurement of NTI-0001, white oak",
				"Received: your report on NTI-0001, white oak", "Taken up: your report on NTI-0001, white oak");
	}

	@Test
	void tellsCoordinatorsOfAllTitlesOfADayInOneMailInTheMorning() throws Exception {
		this.trees.county("morningland", "NTJ");
		TestPerson coordinator = this.people.coordinator("morningland");
		this.trees.standing("morningland", 100, "2026-05-02");
		this.trees.standing("morningland", 140, "2026-05-02");
		SendNotices sender = this.mails.sender(this.server);
		sender.run();
		assertThat(MailRoom.to(this.server, coordinator)).isEmpty();
		later(Duration.ofHours(36), sender);
		later(Duration.ofHours(37), sender);
		assertThat(MailRoom.to(this.server, coordinator)).hasSize(1);
		MimeMessage mail = MailRoom.to(this.server, coordinator).get(0);
		assertThat(MailRoom.subject(mail)).startsWith("Titles of morningland on ");
		assertThat(MailRoom.part(mail, "text/plain")).contains("NTJ-0001, white oak: no longer champion",
				"NTJ-0002, white oak: now champion");
	}

	@Test
	void tellsCoordinatorsOfTheWeekOnceWhoeverQueuesIt() throws Exception {
		this.trees.county("weekland", "NTK");
		TestPerson coordinator = this.people.coordinator("weekland");
		file("weekland", 100);
		SendNotices sender = this.mails.sender(this.server);
		for (int run = 0; run < 3; run++) {
			this.clock.replayAt(this.clock.now().plus(Duration.ofDays(8)), () -> this.calendar.queue("weekland"));
		}
		this.jdbc.sql("update notice set mail = 'waiting' where recipient = ? and kind = 'weekly-digest'")
			.param(coordinator.id())
			.update();
		later(Duration.ofDays(8).plusHours(1), sender);
		assertThat(MailRoom.subjects(this.server, coordinator)).containsExactly("The week in weekland");
		assertThat(MailRoom.part(MailRoom.to(this.server, coordinator).get(0), "text/plain"))
			.contains("- Nominations that wait for a decision now: 1");
	}

	@Test
	void tellsWhoMeasuredAChampionThatItIsDue() throws Exception {
		this.trees.county("dueland", "NTL", """
				{"effectiveOn": "1800-01-01", "oldestFilingMonths": 1200, "currencyYears": 1}""");
		LocalDate until = LocalDate.now().plusDays(14);
		TestTrees.Filed filed = this.trees.standing("dueland", 100, until.minusYears(1).toString());
		this.calendar.queue("dueland");
		this.calendar.queue("dueland");
		this.mails.sender(this.server).run();
		assertThat(MailRoom.subjects(this.server, filed.filer()))
			.containsOnlyOnce("Trees of dueland to be measured again");
		assertThat(raw(this.server)).contains("NTL-0001: current until " + until);
	}

	@Test
	void sendsNothingBeforeTheCommitNorAfterARollback() throws Exception {
		this.trees.county("commitland", "NTM");
		TestPerson kept = this.people.volunteer("commitland");
		TestPerson lost = this.people.volunteer("commitland");
		SendNotices sender = this.mails.sender(this.server);
		new TransactionTemplate(this.transactions).executeWithoutResult((status) -> {
			fileUnchecked("commitland", kept);
			elsewhere(sender::run);
			assertThat(this.server.getReceivedMessages()).isEmpty();
		});
		new TransactionTemplate(this.transactions).executeWithoutResult((status) -> {
			fileUnchecked("commitland", lost);
			status.setRollbackOnly();
		});
		sender.run();
		assertThat(MailRoom.to(this.server, kept)).hasSize(1);
		assertThat(MailRoom.to(this.server, lost)).isEmpty();
	}

	@Test
	void sendsNothingOfARehearsal() throws Exception {
		this.trees.county("unsentland", "NTN");
		TestPerson verifier = this.people.verifier("unsentland");
		TestTrees.Filed filed = file("unsentland", 100);
		this.trees
			.ask(post("/api/v1/measurements/" + filed.measurement() + "/sign-offs?dryRun=true").content(CONFIRMED),
					verifier)
			.andExpect(status().isOk());
		this.mails.sender(this.server).run();
		assertThat(MailRoom.subjects(this.server, filed.filer()))
			.containsExactly("Received: your nomination of NTN-0001, white oak");
	}

	@Test
	void triesAgainLaterWhereTheServerIsAway() throws Exception {
		this.trees.county("awayland", "NTO");
		TestTrees.Filed filed = file("awayland", 100);
		GreenMail away = MailRoom.server();
		int port = away.getSmtp().getPort();
		away.stop();
		assertThat(this.mails.sender(port, "https://trees.example.org").run()).isZero();
		assertThat(this.jdbc.sql("select mail || ' ' || tries || ' ' || last_error from notice where recipient = ?")
			.param(filed.filer().id())
			.query(String.class)
			.single()).isEqualTo("waiting 1 MailSendException, ConnectException");
		SendNotices sender = this.mails.sender(this.server);
		assertThat(sender.run()).isZero();
		assertThat(later(Duration.ofSeconds(70), sender)).isOne();
		assertThat(MailRoom.to(this.server, filed.filer())).hasSize(1);
	}

	@Test
	void sendsOneAgainThatWasNotNotedAndNamesItTheSame() throws Exception {
		this.trees.county("crashland", "NTP");
		TestTrees.Filed filed = file("crashland", 100);
		Outbox dying = new Outbox(this.jdbc, this.settings) {
			@Override
			void sent(UUID id, java.time.Instant now) {
				throw new IllegalStateException("The node dies here");
			}
		};
		new SendNotices(this.mails.mailing(this.server.getSmtp().getPort(), "https://trees.example.org"), dying,
				this.write, this.clock, this.transactions)
			.run();
		later(Duration.ofMinutes(2), this.mails.sender(this.server));
		List<MimeMessage> mails = MailRoom.to(this.server, filed.filer());
		assertThat(mails).hasSize(2);
		assertThat(mails.get(0).getMessageID()).isEqualTo(mails.get(1).getMessageID()).endsWith("@trees.example.org>");
	}

	@Test
	void sendsNoneTwiceFromTwoNodes() throws Exception {
		this.trees.county("twonodeland", "NTQ");
		List<TestPerson> filers = new ArrayList<>();
		for (int filer = 0; filer < 20; filer++) {
			filers.add(file("twonodeland", 100).filer());
		}
		ExecutorService nodes = Executors.newFixedThreadPool(2);
		try {
			List<Future<Integer>> runs = nodes.invokeAll(List.<Callable<Integer>>of(this.mails.sender(this.server)::run,
					this.mails.sender(this.server)::run));
			assertThat(runs.get(0).get() + runs.get(1).get()).isEqualTo(20);
		}
		finally {
			nodes.shutdown();
		}
		HashSet<String> ids = new HashSet<>();
		for (MimeMessage mail : this.server.getReceivedMessages()) {
			ids.add(mail.getMessageID());
		}
		assertThat(ids).hasSize(20);
		assertThat(this.server.getReceivedMessages()).hasSize(20);
	}

	@Test
	void sendsNobodyMoreThanSoManyADay() throws Exception {
		this.trees.county("floodland", "NTR");
		TestPerson volunteer = this.people.volunteer("floodland");
		for (int tree = 0; tree < 25; tree++) {
			this.trees.nominate("floodland", volunteer, "quercus-alba",
					TestTrees.measurement(100 + tree, "2026-05-02"));
		}
		SendNotices sender = this.mails.sender(this.server);
		sender.run();
		assertThat(MailRoom.to(this.server, volunteer)).hasSize(20);
		later(Duration.ofHours(25), sender);
		assertThat(MailRoom.to(this.server, volunteer)).hasSize(25);
	}

	@Test
	void keepsOldNewsAndPracticeAndClosedAccountsFromTheMail() throws Exception {
		this.trees.county("oldland", "NTS");
		this.trees.practiceCounty("drillmailland", "NTT");
		TestTrees.Filed old = file("oldland", 100);
		TestTrees.Filed practice = file("drillmailland", 100);
		SendNotices sender = this.mails.sender(this.server);
		later(Duration.ofDays(4), sender);
		TestTrees.Filed closed = file("oldland", 100);
		this.jdbc.sql("update person set active = false where id = ?").param(closed.filer().id()).update();
		sender.run();
		assertThat(this.server.getReceivedMessages()).isEmpty();
		assertThat(this.jdbc.sql("select mail from notice where recipient in (?, ?, ?)")
			.params(old.filer().id(), practice.filer().id(), closed.filer().id())
			.query(String.class)
			.list()).containsExactly("none", "none", "none");
	}

	@Test
	void doesNotMailAStoryThatIsReplayed() throws Exception {
		this.trees.county("storyland", "NTU");
		TestPerson volunteer = this.people.volunteer("storyland");
		this.clock.replayAt(this.clock.now(), () -> {
			fileUnchecked("storyland", volunteer);
			return true;
		});
		this.mails.sender(this.server).run();
		assertThat(this.server.getReceivedMessages()).isEmpty();
		assertThat(this.jdbc.sql("select mail from notice where recipient = ?")
			.param(volunteer.id())
			.query(String.class)
			.list()).containsExactly("none");
	}

	private TestTrees.Filed file(String county, int inches) throws Exception {
		return this.trees.nominate(county, this.people.volunteer(county), "quercus-alba",
				TestTrees.measurement(inches, "2026-05-02"));
	}

	private void fileUnchecked(String county, TestPerson volunteer) {
		try {
			this.trees.nominate(county, volunteer, "quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		}
		catch (Exception ex) {
			throw new IllegalStateException(ex);
		}
	}

	private void move(TestTrees.Filed filed, String move, TestPerson person) throws Exception {
		this.trees.decide("/api/v1/nominations/" + filed.nomination(), "/moves", move, person)
			.andExpect(status().is2xxSuccessful());
	}

	private TestTrees.Filed fileFor(TestPerson finder, String county, int inches) throws Exception {
		TestPerson filer = this.people.volunteer(county);
		String body = """
				{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2, "accuracyMetres": 8},
				 "access": "public", "filedFor": {"person": "%s"}, "measurement": %s}""".formatted(finder.id(),
				TestTrees.measurement(inches, "2026-05-02"));
		String answer = this.trees.ask(post("/api/v1/counties/" + county + "/nominations").content(body), filer)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		return new TestTrees.Filed(filer, JsonPath.read(answer, "$.id"), JsonPath.read(answer, "$.tree"),
				JsonPath.read(answer, "$.measurement.id"));
	}

	private int later(Duration by, SendNotices sender) {
		return this.clock.replayAt(this.clock.now().plus(by), sender::run);
	}

	private static void elsewhere(Runnable work) {
		Thread thread = new Thread(work);
		thread.start();
		try {
			thread.join();
		}
		catch (InterruptedException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private static String raw(GreenMail server) throws Exception {
		StringBuilder raw = new StringBuilder();
		for (MimeMessage mail : server.getReceivedMessages()) {
			raw.append(MailRoom.part(mail, "text/plain")).append(MailRoom.part(mail, "text/html"));
		}
		return raw.toString();
	}

}
