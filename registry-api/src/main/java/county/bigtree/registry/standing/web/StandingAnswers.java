package county.bigtree.registry.standing.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.ReadStandings;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Asks for standings by what stands in a request. A county is first brought up to today.
 */
@Component
public class StandingAnswers {

	private final CatchUp catchUp;

	private final ReadStanding standing;

	private final ReadStandings standings;

	private final SpeciesCatalogue species;

	private final RulesReader rules;

	StandingAnswers(CatchUp catchUp, ReadStanding standing, ReadStandings standings, SpeciesCatalogue species,
			RulesReader rules) {
		this.catchUp = catchUp;
		this.standing = standing;
		this.standings = standings;
		this.species = species;
		this.rules = rules;
	}

	BookKey book(String county, String key) {
		requireCounty(county);
		if (this.species.find(key).isEmpty()) {
			throw Problem.notFound("No species has this key.");
		}
		return new BookKey(county, key);
	}

	void requireCounty(String county) {
		if (!this.standings.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		this.catchUp.county(county);
	}

	List<String> species(String county, String after, int limit) {
		return this.standings.species(county, after, limit);
	}

	StandingPage ask(BookKey book, StandingQuestion question) {
		return this.standing.read(book, question);
	}

	/**
	 * The instant that a request gives, as such or as a day: then the end of it.
	 */
	public @Nullable Instant instant(String county, @Nullable String knownAt) {
		if (knownAt == null) {
			return null;
		}
		try {
			return (knownAt.length() > 10) ? Instant.parse(knownAt)
					: this.rules.get(county).startOf(LocalDate.parse(knownAt).plusDays(1)).minusNanos(1000);
		}
		catch (DateTimeParseException ex) {
			throw Problem.invalid("#/knownAt", "wrong-type", "knownAt must be an instant or a day");
		}
	}

}
