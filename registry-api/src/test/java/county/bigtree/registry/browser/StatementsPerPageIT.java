package county.bigtree.registry.browser;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Counts the statements that each page sends to the database, as Spring and Hibernate log
 * them, the second time it is asked for: the number may not grow with what the page
 * lists.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class StatementsPerPageIT {

	/** Of any page: what it takes to know who asks included. */
	private static final int MOST = 40;

	/** The handover puts all of a county's open work together. */
	private static final Map<String, Integer> MORE = Map.of("/counties/{county}/handover", 60);

	private static final String JDBC = "org.springframework.jdbc.core.JdbcTemplate";

	private static final String HIBERNATE = "org.hibernate.SQL";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private JdbcClient jdbc;

	private final ListAppender<ILoggingEvent> log = new ListAppender<>();

	@BeforeEach
	void listen() {
		this.log.start();
		for (String name : new String[] { JDBC, HIBERNATE }) {
			logger(name).setLevel(Level.DEBUG);
			logger(name).setAdditive(false);
			logger(name).addAppender(this.log);
		}
	}

	@AfterEach
	void stopListening() {
		for (String name : new String[] { JDBC, HIBERNATE }) {
			logger(name).setLevel(null);
			logger(name).setAdditive(true);
			logger(name).detachAppender(this.log);
		}
	}

	private static Logger logger(String name) {
		return (Logger) LoggerFactory.getLogger(name);
	}

	@Test
	void askTheDatabaseAFewTimesOnly() throws Exception {
		Map<String, Integer> counted = new LinkedHashMap<>();
		Map<String, Browser> browsers = new LinkedHashMap<>();
		for (EveryPageIT.Row row : EveryPageIT.rows().toList()) {
			String address = row.address(this.jdbc);
			Browser browser = browsers.computeIfAbsent(row.who(), this::signedIn);
			browser.read(address);
			counted.merge(row.pattern(), statements(browser, address), Math::max);
		}
		System.getLogger(getClass().getName()).log(System.Logger.Level.INFO, "Statements: {0}", counted);
		assertThat(counted).isNotEmpty()
			.allSatisfy((page, number) -> assertThat(number).isLessThanOrEqualTo(MORE.getOrDefault(page, MOST)));
	}

	private int statements(Browser browser, String address) throws Exception {
		this.log.list.clear();
		browser.read(address);
		List<String> sent = new ArrayList<>();
		this.log.list.forEach((event) -> {
			if (event.getLoggerName().equals(HIBERNATE)
					|| event.getMessage().startsWith("Executing ") && event.getFormattedMessage().contains("[")) {
				sent.add(event.getFormattedMessage());
			}
		});
		return sent.size();
	}

	private Browser signedIn(String who) {
		Browser browser = new Browser(this.mvc, "198.51.100.77");
		try {
			if (!who.equals("anyone")) {
				browser.signIn(who + "@demo.example", "big trees in the demo county");
			}
		}
		catch (Exception ex) {
			throw new IllegalStateException(ex);
		}
		return browser;
	}

}
