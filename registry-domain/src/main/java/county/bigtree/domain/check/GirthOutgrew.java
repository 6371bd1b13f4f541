package county.bigtree.domain.check;

import java.util.Optional;

/**
 * A girth larger than the species' most vigorous growth since the visit before explains.
 */
final class GirthOutgrew implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		return GirthWindow.of(filed, known)
			.filter((window) -> window.now() > window.most())
			.map((window) -> Finding.question("girth-outgrew",
					"The girth is %s, and was %s when last measured %s years ago: more than about %s would be faster than the species grows, so please look at the tape again."
						.formatted(Words.inches(window.now()), Words.inches(window.before()),
								Words.number(window.years()), Words.inches(window.most())),
					window.numbers()));
	}

}
