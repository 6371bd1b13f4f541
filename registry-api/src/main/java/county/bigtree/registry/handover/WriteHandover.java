package county.bigtree.registry.handover;

import java.time.Instant;
import java.util.List;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.CatchUp;

import org.springframework.stereotype.Service;

/**
 * Writes the handover of a county.
 */
@Service
public class WriteHandover {

	private final List<OpenWork> parts;

	private final ReadCounties counties;

	private final CatchUp catchUp;

	private final RegisterClock clock;

	WriteHandover(List<OpenWork> parts, ReadCounties counties, CatchUp catchUp, RegisterClock clock) {
		this.parts = parts;
		this.counties = counties;
		this.catchUp = catchUp;
		this.clock = clock;
	}

	/**
	 * The account of a county as it stands now.
	 */
	public Handover of(Actor coordinator, String key) {
		ReadCounties.County county = this.counties.find(key)
			.orElseThrow(() -> Problem.notFound("No county has this key."));
		this.catchUp.county(key);
		return new Handover(key, county.name(), this.clock.now(), coordinator.creditName(),
				this.parts.stream().flatMap((part) -> part.of(coordinator, key).stream()).toList());
	}

	/**
	 * What a coordinator hands over.
	 *
	 * @param madeBy the credit name of the coordinator who asked for it
	 */
	public record Handover(String county, String name, Instant madeAt, String madeBy, List<OpenWork.Section> sections) {

	}

}
