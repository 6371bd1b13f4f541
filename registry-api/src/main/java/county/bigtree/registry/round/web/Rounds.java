package county.bigtree.registry.round.web;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.round.ReadRound;
import county.bigtree.registry.round.Round;
import county.bigtree.registry.standing.CatchUp;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Rounds as they are asked for over HTTP, of counties that were brought up to today.
 */
@Component
class Rounds {

	private static final Pattern PLACE = Pattern
		.compile("\\s*(-?\\d{1,2}(?:\\.\\d+)?)[,;\\s]+(-?\\d{1,3}(?:\\.\\d+)?)\\s*");

	private static final int POLE = 90;

	private static final int DATE_LINE = 180;

	private final ReadRound rounds;

	private final ReadCounties counties;

	private final CatchUp catchUp;

	Rounds(ReadRound rounds, ReadCounties counties, CatchUp catchUp) {
		this.rounds = rounds;
		this.counties = counties;
		this.catchUp = catchUp;
	}

	/**
	 * The round of the actor.
	 * @param from latitude and longitude with a comma or a space between them
	 */
	ReadRound.Walked of(Actor actor, @Nullable String county, boolean mine, boolean due, @Nullable String from) {
		Round.Place start = start(from);
		if (county != null && this.counties.find(county).isPresent()) {
			this.catchUp.county(county);
		}
		return this.rounds.of(actor, new ReadRound.Question(county, mine, due, start));
	}

	/** The county, brought up to today. */
	ReadCounties.County open(String county) {
		ReadCounties.County found = this.counties.find(county)
			.orElseThrow(() -> Problem.notFound("No county has this key."));
		this.catchUp.county(county);
		return found;
	}

	private static Round.@Nullable Place start(@Nullable String from) {
		if (from == null || from.isBlank()) {
			return null;
		}
		Matcher place = PLACE.matcher(from);
		if (place.matches()) {
			double latitude = Double.parseDouble(place.group(1));
			double longitude = Double.parseDouble(place.group(2));
			if (Math.abs(latitude) <= POLE && Math.abs(longitude) <= DATE_LINE) {
				return new Round.Place("", latitude, longitude);
			}
		}
		throw Problem
			.of(ProblemType.INVALID_PARAMETER,
					"The parameter 'from' must be a latitude and a longitude, like 40.45, -87.70.")
			.with("parameter", "from");
	}

}
