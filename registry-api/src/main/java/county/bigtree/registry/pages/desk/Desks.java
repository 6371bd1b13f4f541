package county.bigtree.registry.pages.desk;

import java.time.ZoneId;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.naming.Naming;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/**
 * Finds the county of a page for its own people, those for practice too, and its words.
 */
@Component
public class Desks {

	private final ReadCounties counties;

	private final MessageSource messages;

	private final Naming naming;

	private final RegisterClock clock;

	Desks(ReadCounties counties, MessageSource messages, Naming naming, RegisterClock clock) {
		this.counties = counties;
		this.messages = messages;
		this.naming = naming;
		this.clock = clock;
	}

	/**
	 * The words of a county, which the page has at hand as {@code words} beside its
	 * {@code county}.
	 */
	public DeskWords open(String county, Units units, Model model) {
		ReadCounties.County found = find(county);
		model.addAttribute("county", found);
		model.addAttribute("practice", found.practice());
		return wordsOf(ZoneId.of(found.timeZone()), units, model);
	}

	/** Words for a page of no one county. */
	DeskWords wordsOf(ZoneId zone, Units units, Model model) {
		DeskWords words = new DeskWords(zone, units, this.messages, this.naming.begin(), this.clock.now());
		model.addAttribute("words", words);
		return words;
	}

	/** The same for its coordinators alone. */
	DeskWords openForCoordinator(String county, @Nullable Viewer viewer, Units units, Model model) {
		DeskWords words = open(county, units, model);
		if (viewer == null || !viewer.coordinates().contains(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "This is for the coordinators of the county.");
		}
		return words;
	}

	ReadCounties.County find(String county) {
		return this.counties.find(county).orElseThrow(() -> Problem.notFound("No county has this key."));
	}

}
