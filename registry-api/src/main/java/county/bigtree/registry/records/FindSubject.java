package county.bigtree.registry.records;

import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.lookup.ReadTrees;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.standing.ReadStandings;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;

/**
 * Finds what a folder is to be about, if the asker may know that it is there.
 */
@Service
public class FindSubject {

	private static final int MOST_DAYS = 366;

	private final ReadTrees trees;

	private final ReadStandings counties;

	private final SpeciesCatalogue species;

	private final CatchUp catchUp;

	FindSubject(ReadTrees trees, ReadStandings counties, SpeciesCatalogue species, CatchUp catchUp) {
		this.trees = trees;
		this.counties = counties;
		this.species = species;
		this.catchUp = catchUp;
	}

	public Subject tree(String idOrTag, @Nullable Actor asker) {
		TreeSummary found = this.trees.find(idOrTag, asker)
			.orElseThrow(() -> Problem.notFound("No public tree has this id or tag."));
		this.catchUp.county(found.county());
		return new Subject.OfTree(found.id(), found.tag(), found.county());
	}

	public Subject book(String county, String key) {
		requireCounty(county);
		if (this.species.find(key).isEmpty()) {
			throw Problem.notFound("No species has this key.");
		}
		return new Subject.OfBook(new BookKey(county, key));
	}

	/** Oneself; anybody, for coordinators and the administrator. */
	public Subject person(UUID person, @Nullable Actor asker) {
		if (asker == null
				|| !person.equals(asker.id()) && !asker.administrator() && !asker.isAnywhere(Role.COORDINATOR)) {
			throw Problem.notFound("No person with this id has records that you may see.");
		}
		return new Subject.OfPerson(person);
	}

	public Subject days(@Nullable String county, @Nullable LocalDate from, @Nullable LocalDate to) {
		if (county == null || from == null || to == null) {
			throw new IllegalArgumentException("days need a county and both ends");
		}
		requireCounty(county);
		if (to.isBefore(from) || from.getYear() < 1 || to.getYear() > 9999 || from.plusDays(MOST_DAYS).isBefore(to)) {
			throw Problem.invalid("#/to", "out-of-range",
					"must not be before from, nor more than %d days after it".formatted(MOST_DAYS));
		}
		return new Subject.OfDays(county, from, to);
	}

	private void requireCounty(String county) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		this.catchUp.county(county);
	}

}
