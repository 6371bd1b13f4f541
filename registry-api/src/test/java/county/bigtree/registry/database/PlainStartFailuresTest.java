package county.bigtree.registry.database;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

import county.bigtree.db.DatabaseUnavailable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.boot.web.server.PortInUseException;

import static org.assertj.core.api.Assertions.assertThat;

class PlainStartFailuresTest {

	private final PlainStartFailures failures = new PlainStartFailures();

	private final ByteArrayOutputStream printed = new ByteArrayOutputStream();

	private final PrintStream errors = System.err;

	@BeforeEach
	void listen() {
		System.setErr(new PrintStream(this.printed, true, StandardCharsets.UTF_8));
	}

	@AfterEach
	void stopListening() {
		System.setErr(this.errors);
	}

	@Test
	void saysTheSentenceOfAnUnavailableDatabaseHoweverDeepItLies() {
		Exception deep = new IllegalStateException("bean",
				new RuntimeException(new DatabaseUnavailable("Free space.")));
		assertThat(this.failures.reportException(deep)).isTrue();
		assertThat(printedLines()).isEqualTo("Free space." + System.lineSeparator());
	}

	@Test
	void saysThatThePortIsTaken() {
		assertThat(this.failures.reportException(new PortInUseException(8080))).isTrue();
		assertThat(printedLines())
			.isEqualTo("Port 8080 is taken by another program: stop that one, or give another port"
					+ " with --server.port." + System.lineSeparator());
	}

	@Test
	void leavesTheUnexpectedToBeReportedInFull() {
		assertThat(this.failures.reportException(new IllegalStateException("a defect"))).isFalse();
		assertThat(printedLines()).isEmpty();
	}

	private String printedLines() {
		return this.printed.toString(StandardCharsets.UTF_8);
	}

}
