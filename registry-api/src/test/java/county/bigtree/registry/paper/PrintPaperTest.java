package county.bigtree.registry.paper;

import java.time.Duration;
import java.util.Map;
import java.util.concurrent.Semaphore;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.templateresolver.StringTemplateResolver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/**
 * How many papers are made at once.
 */
class PrintPaperTest {

	@Test
	void tellsWhenToComeAgainWhileOthersArePrinting() {
		Semaphore turns = new Semaphore(1, true);
		PrintPaper printing = printing(turns);
		turns.acquireUninterruptibly();
		assertThatExceptionOfType(Problem.class).isThrownBy(() -> printing.forOne("x", Map.of(), PaperSize.LETTER, "x"))
			.satisfies((problem) -> assertThat(problem.type()).isEqualTo(ProblemType.BUSY))
			.satisfies((problem) -> assertThat(problem.headers().getFirst("Retry-After")).isEqualTo("1"));
	}

	@Test
	void handsItsTurnOnWhereAPaperFails() {
		Semaphore turns = new Semaphore(1, true);
		PrintPaper printing = printing(turns);
		assertThatExceptionOfType(RuntimeException.class)
			.isThrownBy(() -> printing.forOne("not well-formed", Map.of(), PaperSize.LETTER, "x"));
		assertThat(turns.availablePermits()).isOne();
	}

	private static PrintPaper printing(Semaphore turns) {
		SpringTemplateEngine templates = new SpringTemplateEngine();
		templates.setTemplateResolver(new StringTemplateResolver());
		return new PrintPaper(templates, new SetInType(new PaperFonts()), turns, Duration.ofMillis(1));
	}

}
