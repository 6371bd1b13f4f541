package county.bigtree.registry.command;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicLong;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What a command says of how far it is.
 */
class ReportTest {

	private final ByteArrayOutputStream written = new ByteArrayOutputStream();

	private final AtomicLong now = new AtomicLong();

	@Test
	void drawsABarOfWhatIsDone() {
		Report report = report(true);
		pass(Duration.ofMillis(200));
		report.progress("trees", 250_000, OptionalLong.of(1_000_000));
		assertThat(written()).isEqualTo("[#####...............]  25 % trees: 250,000 of 1,000,000");
	}

	@Test
	void wipesTheBarBeforeALine() {
		Report report = report(true);
		report.begin("trees", OptionalLong.of(10));
		String bar = "[....................]   0 % trees: 0 of 10";
		report.line("Tree %d is wrong", 7);
		assertThat(written())
			.isEqualTo(bar + "\r" + " ".repeat(bar.length()) + "\r" + "Tree 7 is wrong" + System.lineSeparator());
	}

	@Test
	void drawsNoOftenerThanFiveTimesASecond() {
		Report report = report(true);
		for (int done = 1; done <= 1000; done++) {
			pass(Duration.ofMillis(1));
			report.progress("trees", done, OptionalLong.empty());
		}
		assertThat(written().split("\r *\r")).containsExactly("trees: 200", "trees: 400", "trees: 600", "trees: 800",
				"trees: 1,000");
	}

	@Test
	void saysItInLinesNowAndThenWhereThereIsNoTerminal() {
		Report report = report(false);
		report.begin("trees", OptionalLong.of(100));
		for (int done = 1; done <= 100; done++) {
			pass(Duration.ofSeconds(1));
			report.progress("trees", done, OptionalLong.of(100));
		}
		assertThat(written().lines()).containsExactly("  [######..............]  30 % trees: 30 of 100",
				"  [############........]  60 % trees: 60 of 100", "  [##################..]  90 % trees: 90 of 100");
	}

	@Test
	void promisesNoEndWhereMoreComesThanWasCounted() {
		Report report = report(true);
		pass(Duration.ofSeconds(1));
		report.progress("books", 11, OptionalLong.of(10));
		assertThat(written()).isEqualTo("books: 11");
	}

	private Report report(boolean terminal) {
		return new Report(new PrintStream(this.written, true, StandardCharsets.UTF_8), terminal, this.now::get);
	}

	private void pass(Duration time) {
		this.now.addAndGet(time.toNanos());
	}

	private String written() {
		return this.written.toString(StandardCharsets.UTF_8);
	}

}
