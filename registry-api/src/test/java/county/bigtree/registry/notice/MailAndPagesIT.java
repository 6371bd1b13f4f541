package county.bigtree.registry.notice;

import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.UUID;

import com.icegreen.greenmail.util.GreenMail;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.pages.TestPages;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a mail looks like and holds, how one has no more of a kind, and where notices
 * stand on the pages. The headers of a button to have no more, and the request that it
 * sends: RFC 8058, sections 3.1 and 3.2. Machines that write mails say so: RFC 3834,
 * section 5.
 */
@RegistryTest
class MailAndPagesIT {

	private static final String SITE = "https://trees.example.org";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestPages pages;

	@Autowired
	private MailRoom mails;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private RegisterClock clock;

	@Autowired
	private JdbcClient jdbc;

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
	void saysTheSameInPlainTextAndInHtml() throws Exception {
		this.trees.county("twopartland", "NUA");
		TestPerson filer = this.people.volunteer("twopartland");
		MimeMessage mail = received(filer, "twopartland", SITE);
		assertThat(((MimeMultipart) mail.getContent()).getContentType()).startsWith("multipart/alternative");
		String nomination = this.jdbc.sql("select id from nomination where nominator = ?")
			.param(filer.id())
			.query(String.class)
			.single();
		for (String type : List.of("text/plain", "text/html")) {
			assertThat(MailRoom.part(mail, type)).contains("Good day, " + filer.creditName(),
					"Your nomination of NUA-0001, white oak has reached twopartland.",
					SITE + "/nominations/" + nomination, "You get this because you filed it.",
					SITE + "/notices/off?to=" + filer.id());
		}
		assertThat(mail.getFrom()).containsExactly(new InternetAddress(MailRoom.FROM));
		assertThat(mail.getHeader("Auto-Submitted")).containsExactly("auto-generated");
	}

	@Test
	void letsNoNameMakeHeadersOrMarkup() throws Exception {
		this.trees.county("hostileland", "NUB");
		TestPerson filer = this.people.volunteer("hostileland");
		this.jdbc.sql("update person set credit_name = ? where id = ?")
			.params("Eve\r\nBcc: all@example.org\r\n\r\n<b>Öl</b>\u2028{0} ${1}", filer.id())
			.update();
		MimeMessage mail = received(filer, "hostileland", SITE);
		assertThat(mail.getAllRecipients()).hasSize(1);
		assertThat(mail.getHeader("Bcc")).isNull();
		assertThat(((InternetAddress) mail.getAllRecipients()[0]).getPersonal())
			.isEqualTo("Eve Bcc: all@example.org <b>Öl</b> {0} ${1}");
		assertThat(MailRoom.part(mail, "text/html")).contains("&lt;b&gt;Öl&lt;/b&gt;").doesNotContain("<b>");
		assertThat(MailRoom.part(mail, "text/plain"))
			.startsWith("Good day, Eve Bcc: all@example.org <b>Öl</b> {0} ${1},\r\n");
	}

	@Test
	void tellsNoPlaceOwnerOrContact() throws Exception {
		this.trees.county("secretland", "NUC");
		TestPerson filer = this.people.volunteer("secretland");
		this.trees
			.ask(post("/api/v1/counties/secretland/nominations").content(
					"""
							{"species": "quercus-alba", "location": {"latitude": 40.123456, "longitude": -86.234567, "accuracyMetres": 8},
							 "locality": "zqnotice P", "access": "by-permission",
							 "owner": {"name": "zqnotice N", "contact": "zqnotice C"},
							 "filedFor": {"name": "zqnotice F", "contact": "zqnotice G"}, "measurement": %s}"""
						.formatted(TestTrees.measurement(100, "2026-05-02", "zqnotice M"))),
					filer)
			.andExpect(status().isCreated());
		this.mails.sender(this.server).run();
		MimeMessage mail = MailRoom.to(this.server, filer).get(0);
		assertThat(MailRoom.subject(mail) + MailRoom.part(mail, "text/plain") + MailRoom.part(mail, "text/html"))
			.contains("NUC-0001")
			.doesNotContain("zqnotice", "40.1", "86.2");
	}

	@Test
	void stopsAKindByOneRequestOfTheMailProgram() throws Exception {
		this.trees.county("buttonland", "NUD");
		TestPerson filer = this.people.volunteer("buttonland");
		MimeMessage mail = received(filer, "buttonland", SITE);
		assertThat(mail.getHeader("List-Unsubscribe-Post")).containsExactly("List-Unsubscribe=One-Click");
		String link = mail.getHeader("List-Unsubscribe")[0];
		assertThat(link).startsWith("<" + SITE + "/notices/off?").endsWith(">");
		String address = link.substring(1 + SITE.length(), link.length() - 1);
		this.mvc.perform(get(URI.create(address)))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("Send me no more of these")));
		assertThat(refusals(filer)).isEmpty();
		this.mvc
			.perform(post(URI.create(address)).contentType(MediaType.APPLICATION_FORM_URLENCODED)
				.content("List-Unsubscribe=One-Click"))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("There will be no more mails")));
		assertThat(refusals(filer)).containsExactly("filing-received");
		TestTrees.Filed next = this.trees.nominate("buttonland", filer, "quercus-alba",
				TestTrees.measurement(120, "2026-05-02"));
		this.trees.signOff(next.measurement(), this.people.verifier("buttonland"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.mails.sender(this.server).run();
		assertThat(MailRoom.subjects(this.server, filer)).containsExactlyInAnyOrder(
				"Received: your nomination of NUD-0001, white oak", "On the books: NUD-0002, white oak",
				"Champion: NUD-0002, white oak");
	}

	@Test
	void honoursARefusalOfWhatIsQueuedAlready() throws Exception {
		this.trees.county("queuedland", "NUE");
		TestPerson filer = this.people.volunteer("queuedland");
		this.trees.nominate("queuedland", filer, "quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		this.trees.ask(put("/api/v1/people/me/notice-settings").content("{\"mail\": [\"title-won\"]}"), filer)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.kinds[?(@.mail == true)].kind").value("title-won"));
		this.mails.sender(this.server).run();
		assertThat(MailRoom.to(this.server, filer)).isEmpty();
	}

	@Test
	void takesNoLinkThatItDidNotSign() throws Exception {
		TestPerson person = this.people.volunteer("queuedland");
		TestPerson other = this.people.volunteer("queuedland");
		this.trees.county("forgedland", "NUF");
		MimeMessage mail = received(this.people.volunteer("forgedland"), "forgedland", SITE);
		String link = mail.getHeader("List-Unsubscribe")[0];
		String signature = link.substring(link.indexOf("key=") + 4, link.length() - 1);
		for (String key : List.of(signature, "", "x")) {
			for (UUID to : List.of(person.id(), other.id(), UUID.randomUUID())) {
				this.mvc.perform(post("/notices/off?to=" + to + "&kind=filing-received&key=" + key))
					.andExpect(status().isUnprocessableContent());
			}
		}
		this.mvc.perform(get("/notices/off?to=nobody&kind=nothing&key=%00"))
			.andExpect(content().string(containsString("This link is not whole")));
		assertThat(refusals(person)).isEmpty();
	}

	@Test
	void offersTheButtonOverHttpsAlone() throws Exception {
		this.trees.county("plainland", "NUG");
		MimeMessage mail = received(this.people.volunteer("plainland"), "plainland", "http://trees.example.org");
		assertThat(mail.getHeader("List-Unsubscribe")).hasSize(1);
		assertThat(mail.getHeader("List-Unsubscribe-Post")).isNull();
	}

	@Test
	void standsOnThePagesWithoutAMailServer() throws Exception {
		this.trees.county("mineland", "NUH");
		TestPerson filer = this.people.volunteer("mineland");
		this.trees.nominate("mineland", filer, "quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		assertThat(this.pages.signIn(filer).open("/mine")).contains("What is new",
				"Received: your nomination of NUH-0001, white oak");
		this.trees.ask(get("/api/v1/people/me/notices"), filer)
			.andExpect(jsonPath("$.items[0].kind").value("filing-received"))
			.andExpect(jsonPath("$.items[0].tag").value("NUH-0001"))
			.andExpect(jsonPath("$.items[0].mail").value("waiting"))
			.andExpect(jsonPath("$.items.length()").value(1));
		this.trees.ask(get("/api/v1/people/me/notices"), this.people.coordinator("mineland"))
			.andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void isChosenOnTheAccountPage() throws Exception {
		TestPerson person = this.people.volunteer("mineland");
		TestPages.Visitor visitor = this.pages.signIn(person);
		String account = visitor.open("/account");
		assertThat(account).contains("This register sends no mails", "value=\"title-won\" checked")
			.doesNotContain("value=\"weekly-digest\"");
		visitor.send("/account/notices", visitor.hidden(account), "mail", "title-won").taken();
		assertThat(visitor.open("/account")).contains("value=\"title-won\" checked")
			.doesNotContain("value=\"title-lost\" checked");
		assertThat(refusals(person)).contains("title-lost", "filing-received").doesNotContain("title-won");
		assertThat(this.pages.signIn(this.people.coordinator("mineland")).open("/account"))
			.contains("value=\"weekly-digest\" checked");
	}

	@Test
	void showsTheAdministratorWhatIsStuck() throws Exception {
		this.trees.county("stuckland", "NUI");
		TestPerson filer = this.people.volunteer("stuckland");
		TestPerson administrator = this.people.administrator();
		this.trees.nominate("stuckland", filer, "quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		GreenMail away = MailRoom.server();
		int port = away.getSmtp().getPort();
		away.stop();
		SendNotices sender = this.mails.sender(port, SITE);
		this.clock.replayAt(this.clock.now().plus(Duration.ofMinutes(1)), sender::run);
		this.trees.ask(get("/api/v1/notices/stuck"), administrator).andExpect(jsonPath("$.items.length()").value(0));
		for (int minutes : List.of(3, 6, 12, 24)) {
			this.clock.replayAt(this.clock.now().plus(Duration.ofMinutes(minutes)), sender::run);
		}
		this.trees.ask(get("/api/v1/notices/stuck"), administrator)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].recipient").value(filer.id().toString()))
			.andExpect(jsonPath("$.items[0].tries").value(5));
		TestPages.Visitor visitor = this.pages.signIn(administrator);
		String page = visitor.open("/desk/notices");
		assertThat(page).contains("MailSendException, ConnectException").doesNotContain(filer.email());
		TestPages.Visitor coordinator = this.pages.signIn(this.people.coordinator("stuckland"));
		assertThat(coordinator.open("/desk/stuckland")).contains("Mails are not going out at present");
		visitor.send("/desk/notices/retry", visitor.hidden(page)).taken();
		assertThat(coordinator.open("/desk/stuckland")).doesNotContain("Mails are not going out at present");
		this.mails.sender(this.server).run();
		assertThat(MailRoom.to(this.server, filer)).hasSize(1);
		this.trees.ask(post("/api/v1/notices/stuck/dismissal"), administrator)
			.andExpect(jsonPath("$.notices").value(0));
		this.trees.ask(get("/api/v1/notices/stuck"), this.people.coordinator("stuckland"))
			.andExpect(status().isForbidden());
	}

	@Test
	void goesWithAnErasedAccount() throws Exception {
		this.trees.county("goneland", "NUJ");
		TestPerson filer = this.people.volunteer("goneland");
		this.trees.nominate("goneland", filer, "quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		this.trees
			.ask(post("/api/v1/people/me/erasure").content("{\"presentPassword\": \"" + TestPeople.PASSWORD + "\"}"),
					filer)
			.andExpect(status().isNoContent());
		this.mails.sender(this.server).run();
		assertThat(this.server.getReceivedMessages()).isEmpty();
		assertThat(this.jdbc.sql("select count(*) from notice where recipient = ?")
			.param(filer.id())
			.query(Integer.class)
			.single()).isZero();
	}

	private MimeMessage received(TestPerson filer, String county, String address) throws Exception {
		this.trees.nominate(county, filer, "quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		this.mails.sender(this.server.getSmtp().getPort(), address).run();
		return MailRoom.to(this.server, filer).get(0);
	}

	private List<String> refusals(TestPerson person) {
		return this.jdbc.sql("select kind from notice_refusal where person = ?")
			.param(person.id())
			.query(String.class)
			.list();
	}

}
