package county.bigtree.domain.check;

import java.util.Optional;

/**
 * A girth smaller than before by more than both tapes may be off.
 */
final class GirthShrank implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		return GirthWindow.of(filed, known)
			.filter((window) -> window.now() < window.least())
			.map((window) -> Finding.question("girth-shrank",
					"The girth is %s, and was %s when last measured: stems don't shrink, so please look at the tape, the height at which it lay, and whether it is the same tree."
						.formatted(Words.inches(window.now()), Words.inches(window.before())),
					window.numbers()));
	}

}
