package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.CarriedFrom;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import org.jspecify.annotations.Nullable;

/**
 * The standing of a species in a county on a day as known at an instant, by brute force
 * from all that was ever told: no spans, no index, no increments. It shares with the
 * service only the rule of who holds a title.
 */
class Oracle {

	private final Known known;

	private final @Nullable UUID counted;

	private final @Nullable UUID accepted;

	Oracle(Known known) {
		this(known, null, null);
	}

	/**
	 * As if a visit counted and a tree were accepted.
	 */
	private Oracle(Known known, @Nullable UUID counted, @Nullable UUID accepted) {
		this.known = known;
		this.counted = counted;
		this.accepted = accepted;
	}

	/**
	 * How many sign-offs a visit needs when it gets its first, before which this is
	 * asked.
	 * @param tree the tree whose score it may give
	 * @param rulebook the rules of the visit's day
	 * @param zone that of the county where the tree stands
	 */
	int needed(Known.Visit visit, UUID tree, Rulebook rulebook, ZoneId zone, Instant at) {
		return titleRestsOn(visit.id(), tree, zone, at) ? rulebook.title().requiredSignOffs()
				: rulebook.requiredSignOffs();
	}

	private boolean titleRestsOn(UUID visit, UUID tree, ZoneId zone, Instant at) {
		BookKey book = book(tree, at);
		Oracle supposing = new Oracle(this.known, visit, tree);
		LocalDate day = LocalDate.ofInstant(at, zone);
		boolean held = supposing.holders(book, day, at).containsKey(tree);
		boolean byIt = supposing.standing(book, day, at)
			.stream()
			.filter((scored) -> scored.tree().equals(tree))
			.anyMatch((scored) -> scored.measurement().equals(visit) || visit.equals(scored.from().height())
					|| visit.equals(scored.from().crown()));
		return held && byIt;
	}

	/**
	 * Whether a sign-off, already told, is to be refused: a title would rest on what it
	 * makes count, and too few photos of the tree are passed.
	 * @param rulebook the rules of the day of the visit signed off
	 */
	boolean lacksPhotos(Known.Word word, Known.@Nullable Visit own, UUID tree, Rulebook rulebook, ZoneId zone,
			Instant at) {
		UUID counting = (own != null && own.measures().full()) ? own.id()
				: (word.verdict().equals("confirmed") ? word.visit() : null);
		return counting != null && photosPassed(tree, at) < rulebook.title().photos()
				&& titleRestsOn(counting, tree, zone, at);
	}

	private long photosPassed(UUID tree, Instant at) {
		Set<UUID> same = same(tree, at);
		return this.known.photos.stream()
			.filter((told) -> !told.at().isAfter(at))
			.map(Known.Told::what)
			.filter((photo) -> {
				Known.Visit of = photo.visit();
				Known.Looked looked = last(this.known.looked, at, (told) -> told.photo().equals(photo.id()));
				return same.contains((of != null) ? treeOf(of, at) : photo.tree()) && looked != null
						&& looked.word().equals("pass")
						&& last(this.known.photosErased, at, photo.id()::equals) == null;
			})
			.count();
	}

	/**
	 * The book in which a tree is or would be ranked.
	 */
	BookKey book(UUID tree, Instant at) {
		Known.Named name = Objects.requireNonNull(last(this.known.names, at, (named) -> named.tree().equals(tree)));
		Known.Placed place = Objects
			.requireNonNull(last(this.known.places, at, (placed) -> placed.tree().equals(tree)));
		return new BookKey(place.county(), rankedAs(name.species(), at));
	}

	Map<UUID, Title> holders(BookKey book, LocalDate day, Instant at) {
		Rulebook rules = rules(book.county(), day, at);
		Set<String> listed = rules.eligibleSpecies();
		return (listed != null && !listed.contains(book.species())) ? Map.of()
				: Holders.of(book.species(), standing(book, day, at), rules, day);
	}

	Rulebook rules(String county, LocalDate day, Instant at) {
		Rulebook best = null;
		for (Known.Told<Known.Rules> told : this.known.rules) {
			Rulebook next = told.what().rulebook();
			boolean applies = told.what().county().equals(county) && !told.at().isAfter(at)
					&& !next.effectiveOn().isAfter(day);
			if (applies && (best == null || !next.effectiveOn().isBefore(best.effectiveOn()))) {
				best = next;
			}
		}
		if (best == null) {
			throw new IllegalStateException("no rules");
		}
		return best;
	}

	List<ScoredTree> standing(BookKey book, LocalDate day, Instant at) {
		List<ScoredTree> standing = new ArrayList<>();
		for (Known.Told<Known.NewTree> tree : this.known.trees) {
			UUID id = tree.what().id();
			Known.Named name = last(this.known.names, at, (named) -> named.tree().equals(id));
			Known.Placed place = last(this.known.places, at, (placed) -> placed.tree().equals(id));
			boolean here = name != null && place != null && rankedAs(name.species(), at).equals(book.species())
					&& place.county().equals(book.county());
			Set<UUID> same = same(id, at);
			if (here && onTheBooks(id, same, at) && stands(same, day, at)) {
				Best best = latest(same, day, at);
				if (best != null) {
					standing.add(scored(id, same, best, day, at));
				}
			}
		}
		standing.sort(ScoredTree.RANKING);
		return standing;
	}

	private boolean onTheBooks(UUID tree, Set<UUID> same, Instant at) {
		Known.Eligible eligible = last(this.known.eligible, at, (word) -> word.tree().equals(tree));
		boolean taken = tree.equals(this.accepted) || last(this.known.accepted, at, same::contains) != null;
		return taken && (eligible == null || eligible.yes()) && last(this.known.takenOff, at, tree::equals) == null
				&& last(this.known.merges, at, (merge) -> merge.tree().equals(tree) && !undone(merge, at)) == null;
	}

	private boolean undone(Known.Merge merge, Instant at) {
		return last(this.known.mergesRevoked, at, merge.id()::equals) != null;
	}

	/**
	 * The tree and all that are known to be the same.
	 */
	private Set<UUID> same(UUID tree, Instant at) {
		Set<UUID> same = new HashSet<>(Set.of(tree));
		for (int before = 0; before < same.size();) {
			before = same.size();
			for (Known.Told<Known.Merge> told : this.known.merges) {
				if (same.contains(told.what().into()) && !told.at().isAfter(at) && !undone(told.what(), at)) {
					same.add(told.what().tree());
				}
			}
		}
		return same;
	}

	private String rankedAs(String species, Instant at) {
		Known.Fold fold = last(this.known.folds, at, (told) -> told.species().equals(species));
		return (fold != null) ? rankedAs(fold.into(), at) : species;
	}

	private ScoredTree scored(UUID tree, Set<UUID> same, Best best, LocalDate day, Instant at) {
		Known.Visit visit = best.visit();
		LocalDate seenOn = visit.on();
		LocalDate lostOn = null;
		for (Known.Told<Known.Seen> told : this.known.seen) {
			Known.Seen seen = told.what();
			if (told.at().isAfter(at) || !same.contains(seen.tree())) {
				continue;
			}
			if (seen.condition().standing() && !seen.observed().isAfter(day) && seen.observed().isAfter(seenOn)) {
				seenOn = seen.observed();
			}
			if (seen.condition() == Condition.DAMAGED && seen.holdsFrom().isAfter(visit.on())
					&& !seen.holdsFrom().isAfter(day) && (lostOn == null || seen.holdsFrom().isBefore(lostOn))) {
				lostOn = seen.holdsFrom();
			}
		}
		return new ScoredTree(tree, visit.id(), best.score(), visit.on(), seenOn, lostOn, visit.carriedOver(),
				best.from(), best.methods());
	}

	private boolean stands(Set<UUID> same, LocalDate day, Instant at) {
		Known.Told<Known.Seen> last = null;
		for (Known.Told<Known.Seen> told : this.known.seen) {
			Known.Seen seen = told.what();
			boolean says = !told.at().isAfter(at) && same.contains(seen.tree()) && !seen.holdsFrom().isAfter(day)
					&& seen.condition() != Condition.NOT_FOUND;
			if (says && (last == null || !seen.holdsFrom().isBefore(last.what().holdsFrom()))) {
				last = told;
			}
		}
		return last == null || last.what().condition().standing();
	}

	private @Nullable Best latest(Set<UUID> same, LocalDate day, Instant at) {
		Known.Told<Known.Ruling> ruling = ruling(same, day, at);
		Best latest = null;
		for (Known.Told<Known.Visit> told : this.known.visits) {
			Known.Visit visit = told.what();
			if (usable(told, same, day, at, ruling) && (latest == null || !visit.on().isBefore(latest.visit().on()))) {
				Best best = best(told, same, day, at, ruling);
				latest = (best != null) ? best : latest;
			}
		}
		return latest;
	}

	private boolean usable(Known.Told<Known.Visit> told, Set<UUID> same, LocalDate day, Instant at,
			Known.@Nullable Told<Known.Ruling> ruling) {
		Known.Visit visit = told.what();
		boolean ruledOut = ruling != null && !told.at().isAfter(ruling.at())
				&& !ruling.what().kept().contains(visit.id());
		return !told.at().isAfter(at) && same.contains(treeOf(visit, at)) && !visit.on().isAfter(day)
				&& counts(visit, at) && !ruledOut;
	}

	/**
	 * A visit's score: with a height and a crown of earlier visits where it lacks them.
	 */
	private @Nullable Best best(Known.Told<Known.Visit> told, Set<UUID> same, LocalDate day, Instant at,
			Known.@Nullable Told<Known.Ruling> ruling) {
		Known.Visit visit = told.what();
		Known.Measures own = measures(visit, at);
		Double girth = own.girth();
		if (girth == null) {
			return null;
		}
		Double height = own.height();
		Double crown = own.crown();
		double heightU = own.uncertainty();
		double crownU = own.uncertainty();
		Method heightBy = visit.methods().height();
		Method crownBy = visit.methods().crown();
		UUID heightFrom = null;
		UUID crownFrom = null;
		for (Known.Told<Known.Visit> other : inOrder(told)) {
			Known.Measures measures = measures(other.what(), at);
			boolean fresh = usable(other, same, day, at, ruling) && !lost(same, other.what().on(), visit.on(), at);
			boolean heightFresh = fresh && young(other, visit, visit.carries().heightYears());
			boolean crownFresh = fresh && young(other, visit, visit.carries().crownYears());
			if (!usable(other, same, day, at, ruling)) {
				continue;
			}
			if (own.height() == null && measures.height() != null) {
				height = heightFresh ? measures.height() : null;
				heightU = grown(measures, other, visit);
				heightFrom = other.what().id();
				heightBy = other.what().methods().height();
			}
			if (own.crown() == null && measures.crown() != null) {
				crown = crownFresh ? measures.crown() : null;
				crownU = grown(measures, other, visit);
				crownFrom = other.what().id();
				crownBy = other.what().methods().crown();
			}
		}
		if (height == null || crown == null) {
			return null;
		}
		double uncertainty = Math
			.sqrt(own.uncertainty() * own.uncertainty() + heightU * heightU + crownU * crownU / 16);
		double kept = Math.round(uncertainty * 10_000) / 10_000.0;
		return new Best(visit, new Score(Points.of(girth, height, crown), kept), new CarriedFrom(heightFrom, crownFrom),
				new FigureMethods(visit.methods().girth(), heightBy, crownBy));
	}

	/**
	 * The visits before one: by their day, then by when they were told.
	 */
	private List<Known.Told<Known.Visit>> inOrder(Known.Told<Known.Visit> before) {
		List<Known.Told<Known.Visit>> all = new ArrayList<>(this.known.visits);
		all.sort((one, other) -> one.what().on().compareTo(other.what().on()));
		return all.subList(0, all.indexOf(before));
	}

	private static boolean young(Known.Told<Known.Visit> other, Known.Visit visit, int years) {
		return years > 0 && !other.what().on().plusYears(years).isBefore(visit.on());
	}

	private static double grown(Known.Measures measures, Known.Told<Known.Visit> other, Known.Visit visit) {
		double years = (visit.on().toEpochDay() - other.what().on().toEpochDay()) / 365.25;
		return Math.sqrt(measures.uncertainty() * measures.uncertainty() + years * years / 3);
	}

	private boolean lost(Set<UUID> same, LocalDate after, LocalDate until, Instant at) {
		return this.known.seen.stream()
			.filter((told) -> !told.at().isAfter(at))
			.map(Known.Told::what)
			.anyMatch((seen) -> same.contains(seen.tree()) && seen.condition() == Condition.DAMAGED
					&& seen.holdsFrom().isAfter(after) && !seen.holdsFrom().isAfter(until));
	}

	private Known.Measures measures(Known.Visit visit, Instant at) {
		Known.Again again = last(this.known.again, at, (told) -> told.visit().equals(visit.id()));
		return (again != null) ? again.measures() : visit.measures();
	}

	/**
	 * The visit from which a tree's score comes, and the score.
	 */
	private record Best(Known.Visit visit, Score score, CarriedFrom from, FigureMethods methods) {
	}

	private UUID treeOf(Known.Visit visit, Instant at) {
		Known.Assigned assigned = last(this.known.assigned, at, (told) -> told.visit().equals(visit.id()));
		return (assigned != null) ? assigned.tree() : visit.tree();
	}

	private Known.@Nullable Told<Known.Ruling> ruling(Set<UUID> same, LocalDate day, Instant at) {
		Known.Told<Known.Ruling> last = null;
		for (Known.Told<Known.Ruling> told : this.known.rulings) {
			boolean holds = !told.at().isAfter(at) && same.contains(told.what().tree())
					&& !told.what().from().isAfter(day);
			if (holds && (last == null || !told.what().from().isBefore(last.what().from()))) {
				last = told;
			}
		}
		return last;
	}

	private boolean counts(Known.Visit visit, Instant at) {
		if (visit.id().equals(this.counted)) {
			return true;
		}
		if (last(this.known.setAside, at, visit.id()::equals) != null) {
			return false;
		}
		if (visit.carriedOver()) {
			return true;
		}
		Known.Word bringer = last(this.known.words, at, (word) -> visit.id().equals(word.own()));
		if (bringer != null) {
			return visit.measures().full() && !isRevoked(bringer, at) && !waits(bringer, at);
		}
		int agreeing = 0;
		for (Known.Told<Known.Word> told : this.known.words) {
			Known.Word word = told.what();
			if (told.at().isAfter(at) || !word.visit().equals(visit.id()) || waits(word, at)) {
				continue;
			}
			if (broughtFull(word) || (word.verdict().equals("not-confirmed") && !isRevoked(word, at))) {
				return false;
			}
			if (word.verdict().equals("confirmed") && !isRevoked(word, at)) {
				agreeing++;
			}
		}
		Known.Required required = last(this.known.required, at, (needed) -> needed.visit().equals(visit.id()));
		return required != null && agreeing >= required.howMany();
	}

	private boolean broughtFull(Known.Word word) {
		return this.known.visits.stream()
			.map(Known.Told::what)
			.anyMatch((visit) -> visit.id().equals(word.own()) && visit.measures().full());
	}

	private boolean waits(Known.Word word, Instant at) {
		return last(this.known.deferred, at, word.id()::equals) != null
				&& last(this.known.assented, at, word.id()::equals) == null;
	}

	private boolean isRevoked(Known.Word word, Instant at) {
		return last(this.known.revoked, at, word.id()::equals) != null;
	}

	private static <T> @Nullable T last(List<Known.Told<T>> told, Instant at, Predicate<T> about) {
		T last = null;
		for (Known.Told<T> one : told) {
			if (!one.at().isAfter(at) && about.test(one.what())) {
				last = one.what();
			}
		}
		return last;
	}

}
