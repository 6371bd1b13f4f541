package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.rulebook.TieRule;
import county.bigtree.domain.rulebook.TitleRules;
import county.bigtree.domain.review.Tolerances;
import county.bigtree.domain.rulebook.WhenStale;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.id.Uuid7;
import org.jspecify.annotations.Nullable;

/**
 * Two counties in different time zones, two species, a few trees, and a random series of
 * everything that can happen to them: told to the register and to the oracle alike.
 * Points and years are drawn from small ranges, so that ties, stale holders and late
 * filings that matter are common.
 */
class RandomHistory {

	private static final ZoneId[] ZONES = { ZoneId.of("America/Chicago"), ZoneId.of("Asia/Tokyo") };

	private static final AtomicInteger PREFIXES = new AtomicInteger();

	final Known known = new Known();

	private final Oracle oracle = new Oracle(this.known);

	final List<BookKey> books = new ArrayList<>();

	final String[] counties = new String[2];

	private final String[] species = new String[3];

	private boolean thirdIsThere;

	private final Random random;

	private final StandingFixture register;

	/**
	 * Sign-offs that the register refused and the oracle doesn't, or the other way round.
	 */
	final List<String> misjudged = new ArrayList<>();

	private Instant now = Instant.parse("2001-03-01T15:00:00Z");

	RandomHistory(long seed, StandingFixture register) {
		this.random = new Random(seed);
		this.register = register;
		String name = Long.toUnsignedString(seed, 36).toLowerCase();
		String letters = Long.toString(seed, 26)
			.chars()
			.mapToObj((digit) -> Character.toString('a' + Character.digit(digit, 26)))
			.collect(Collectors.joining());
		this.species[0] = "probatio-prima" + letters;
		this.species[1] = "probatio-altera" + letters;
		this.species[2] = "probatio-tertia" + letters;
		for (int index = 0; index < 2; index++) {
			this.counties[index] = "history-" + name + "-" + index;
			for (String key : this.species) {
				this.books.add(new BookKey(this.counties[index], key));
			}
		}
	}

	Instant now() {
		return this.now;
	}

	ZoneId zone(String county) {
		return ZONES[county.equals(this.counties[0]) ? 0 : 1];
	}

	LocalDate day(String county, Instant at) {
		return LocalDate.ofInstant(at, zone(county));
	}

	RandomHistory play(int steps) {
		this.register.begin(this.species[0], this.species[1]);
		for (int index = 0; index < 2; index++) {
			String county = this.counties[index];
			Rulebook first = rulebook(Rulebook.BEGINNING);
			String prefix = prefix();
			ZoneId zone = ZONES[index];
			Instant at = at(() -> this.register.county(county, prefix, zone.getId(), first));
			this.known.rules.add(new Known.Told<>(new Known.Rules(county, first), at));
		}
		addTree();
		addTree();
		for (int step = 0; step < steps; step++) {
			pass();
			happen();
			if (chance(15)) {
				look();
			}
		}
		pass();
		look();
		return this;
	}

	List<UUID> trees() {
		return this.known.trees.stream().map((told) -> told.what().id()).toList();
	}

	private void look() {
		for (String county : this.counties) {
			at(() -> {
				this.register.catchUp.county(county);
				return this.now;
			});
		}
	}

	private void happen() {
		int what = this.random.nextInt(151);
		if (what >= 100) {
			correct(what - 100);
		}
		else if (what < 14) {
			addTree();
		}
		else if (what < 40) {
			measureAndSign(root(anyTree()));
		}
		else if (what < 46) {
			signSomething();
		}
		else if (what < 53) {
			revokeSomething();
		}
		else if (what < 60) {
			setSomethingAside();
		}
		else if (what < 77) {
			report(root(anyTree()));
		}
		else if (what < 84) {
			identify(anyTree());
		}
		else if (what < 90) {
			relocate(root(anyTree()));
		}
		else {
			newRules();
		}
	}

	private void correct(int what) {
		if (what < 5) {
			judgeEligibility(anyTree());
		}
		else if (what < 7) {
			takeOff(anyTree());
		}
		else if (what < 13) {
			merge(root(anyTree()), root(anyTree()));
		}
		else if (what < 16) {
			revokeAMerge();
		}
		else if (what < 21) {
			split(root(anyTree()));
		}
		else if (what < 26) {
			rule(root(anyTree()));
		}
		else if (what < 28) {
			fold();
		}
		else if (what < 34) {
			reduceAgain();
		}
		else if (what < 37) {
			addSpecies();
		}
		else if (what < 43) {
			assentToSomething();
		}
		else if (chance(60)) {
			photograph(anyTree());
		}
		else {
			lookAtAPhoto();
		}
	}

	private void judgeEligibility(UUID tree) {
		boolean yes = chance(40);
		Instant at = at(() -> this.register.eligible(county(tree), tree, yes));
		this.known.eligible.add(new Known.Told<>(new Known.Eligible(tree, yes), at));
	}

	private void takeOff(UUID tree) {
		if (this.known.takenOff.stream().noneMatch((told) -> told.what().equals(tree))) {
			Instant at = at(() -> this.register.takeOff(county(tree), tree));
			this.known.takenOff.add(new Known.Told<>(tree, at));
		}
	}

	/**
	 * As with a relocation, a tree measured or seen today does not go to where that day
	 * has not begun.
	 */
	private void merge(UUID tree, UUID into) {
		if (!tree.equals(into) && !latestDay(tree).isAfter(day(county(into), this.now))) {
			Known.Merge merge = new Known.Merge(Uuid7.next(), tree, into);
			Instant at = at(() -> this.register.merge(county(tree), county(into), merge));
			this.known.merges.add(new Known.Told<>(merge, at));
		}
	}

	private void revokeAMerge() {
		List<Known.Merge> standing = standingMerges();
		if (!standing.isEmpty()) {
			Known.Merge merge = standing.get(this.random.nextInt(standing.size()));
			Instant at = at(() -> this.register.revokeMerge(county(merge.tree()), county(root(merge.into())), merge));
			this.known.mergesRevoked.add(new Known.Told<>(merge.id(), at));
		}
	}

	private void split(UUID tree) {
		UUID newTree = Uuid7.next();
		String county = county(tree);
		String name = species();
		Set<UUID> visits = withWhatSignOffsBrought(someVisitsOf(tree));
		Instant at = at(() -> this.register.split(county, county, tree, newTree, name, List.copyOf(visits)));
		this.known.trees.add(new Known.Told<>(new Known.NewTree(newTree), at));
		this.known.names.add(new Known.Told<>(new Known.Named(newTree, name), at));
		this.known.places.add(new Known.Told<>(new Known.Placed(newTree, county), at));
		this.known.accepted.add(new Known.Told<>(newTree, at));
		visits.forEach((visit) -> this.known.assigned.add(new Known.Told<>(new Known.Assigned(visit, newTree), at)));
	}

	/**
	 * The use case moves a filed measurement and those that verifiers brought for it
	 * together: all are of one tree.
	 */
	private Set<UUID> withWhatSignOffsBrought(List<UUID> visits) {
		Set<UUID> all = new HashSet<>(visits);
		for (int before = -1; before < all.size();) {
			before = all.size();
			this.known.words.stream().map(Known.Told::what).forEach((word) -> {
				if (word.own() != null && (all.contains(word.visit()) || all.contains(word.own()))) {
					all.add(word.visit());
					all.add(word.own());
				}
			});
		}
		return all;
	}

	private void rule(UUID tree) {
		Known.Ruling ruling = new Known.Ruling(Uuid7.next(), tree, pastDay(tree, 2500), Set.copyOf(someVisitsOf(tree)));
		Instant at = at(() -> this.register.rule(county(tree), county(tree), ruling));
		this.known.rulings.add(new Known.Told<>(ruling, at));
	}

	private void fold() {
		if (this.known.folds.isEmpty()) {
			Known.Fold fold = new Known.Fold(this.species[1], this.species[0]);
			List<UUID> named = this.known.trees.stream()
				.map((told) -> told.what().id())
				.filter((tree) -> nameOf(tree).equals(fold.species()))
				.toList();
			Instant at = at(() -> this.register.fold(this.counties[0], this.counties[1], fold, named));
			this.known.folds.add(new Known.Told<>(fold, at));
		}
	}

	/**
	 * A species that the catalogue lacked: some trees are found to be of it from then on.
	 */
	private void addSpecies() {
		if (!this.thirdIsThere) {
			at(() -> this.register.species(this.counties[0], this.species[2]));
			this.thirdIsThere = true;
		}
	}

	private List<UUID> someVisitsOf(UUID tree) {
		return this.known.visits.stream()
			.map(Known.Told::what)
			.filter((visit) -> root(treeOf(visit.id())).equals(tree) && chance(50))
			.map(Known.Visit::id)
			.toList();
	}

	private String nameOf(UUID tree) {
		return this.known.names.stream()
			.map(Known.Told::what)
			.filter((named) -> named.tree().equals(tree))
			.reduce((earlier, later) -> later)
			.orElseThrow()
			.species();
	}

	private List<Known.Merge> standingMerges() {
		return this.known.merges.stream()
			.map(Known.Told::what)
			.filter((merge) -> this.known.mergesRevoked.stream().noneMatch((told) -> told.what().equals(merge.id())))
			.toList();
	}

	/**
	 * The tree into which this one is merged, all the way.
	 */
	private UUID root(UUID tree) {
		return standingMerges().stream()
			.filter((merge) -> merge.tree().equals(tree))
			.findFirst()
			.map((merge) -> root(merge.into()))
			.orElse(tree);
	}

	private void addTree() {
		UUID tree = Uuid7.next();
		String county = this.counties[chance(75) ? 0 : 1];
		String species = species();
		Instant at = at(() -> this.register.tree(county, tree, species));
		this.known.trees.add(new Known.Told<>(new Known.NewTree(tree), at));
		this.known.names.add(new Known.Told<>(new Known.Named(tree, species), at));
		this.known.places.add(new Known.Told<>(new Known.Placed(tree, county), at));
		if (chance(50)) {
			photograph(tree);
		}
		measureAndSign(tree);
		if (chance(85)) {
			Instant accepted = at(() -> this.register.accept(county, tree));
			this.known.accepted.add(new Known.Told<>(tree, accepted));
		}
	}

	private void measureAndSign(UUID tree) {
		Known.Visit visit = visit(tree, chance(20));
		this.known.visits.add(new Known.Told<>(visit, at(() -> this.register.measure(county(tree), visit))));
		if (!visit.carriedOver() && chance(80)) {
			sign(visit);
			if (chance(40)) {
				sign(visit);
			}
		}
	}

	private void signSomething() {
		if (!this.known.visits.isEmpty()) {
			sign(this.known.visits.get(this.random.nextInt(this.known.visits.size())).what());
		}
	}

	private void photograph(UUID tree) {
		List<Known.Visit> visits = this.known.visits.stream()
			.map(Known.Told::what)
			.filter((visit) -> treeOf(visit.id()).equals(tree))
			.toList();
		Known.Visit of = (visits.isEmpty() || chance(50)) ? null : visits.get(this.random.nextInt(visits.size()));
		Known.Photo photo = new Known.Photo(Uuid7.next(), tree, of);
		Instant at = at(() -> this.register.photograph(county(tree), photo));
		this.known.photos.add(new Known.Told<>(photo, at));
		if (chance(80)) {
			look(photo, "pass");
		}
	}

	private void lookAtAPhoto() {
		if (!this.known.photos.isEmpty()) {
			Known.Photo photo = this.known.photos.get(this.random.nextInt(this.known.photos.size())).what();
			if (chance(20) && this.known.photosErased.stream().noneMatch((told) -> told.what().equals(photo.id()))) {
				Instant at = at(() -> this.register.erase(county(photo.tree()), photo));
				this.known.photosErased.add(new Known.Told<>(photo.id(), at));
			}
			else {
				look(photo, List.of("pass", "refuse", "take-back", "withdraw").get(this.random.nextInt(4)));
			}
		}
	}

	private void look(Known.Photo photo, String word) {
		Instant at = at(() -> this.register.look(county(photo.tree()), photo, word));
		this.known.looked.add(new Known.Told<>(new Known.Looked(photo.id(), word), at));
	}

	/**
	 * How many sign-offs are needed, whether this one is refused for want of photos and
	 * whether it waits is the register's to judge: the oracle judges for itself.
	 */
	private void sign(Known.Visit visit) {
		boolean first = this.known.required.stream().noneMatch((told) -> told.what().visit().equals(visit.id()));
		UUID tree = treeOf(visit.id());
		Known.Visit own = chance(25) ? visit(tree, false) : null;
		String verdict = (own != null && chance(50)) ? "corrected" : (chance(85) ? "confirmed" : "not-confirmed");
		Known.Word word = new Known.Word(Uuid7.next(), visit.id(), verdict, (own != null) ? own.id() : null);
		boolean byCoordinator = chance(30);
		Instant at = at(() -> this.register.signOff(county(tree), tree,
				new StandingFixture.Signing(visit, word, first, own), byCoordinator));
		UUID root = root(tree);
		BookKey book = this.oracle.book(root, at);
		Rulebook ofItsDay = this.oracle.rules(county(tree), visit.on(), at);
		if (first) {
			int needed = this.oracle.needed(visit, root, ofItsDay, zone(book.county()), at);
			this.known.required.add(new Known.Told<>(new Known.Required(visit.id(), needed), at));
		}
		Map<UUID, Title> before = this.oracle.holders(book, day(book.county(), at), at);
		this.known.words.add(new Known.Told<>(word, at));
		if (own != null) {
			this.known.visits.add(new Known.Told<>(own, at));
		}
		if (isRefused(word, own, ofItsDay, at)) {
			if (first) {
				this.known.required.removeIf((told) -> told.what().visit().equals(visit.id()));
			}
			return;
		}
		boolean asks = this.oracle.rules(book.county(), day(book.county(), at), at).title().needsCoordinator();
		if (asks && !before.equals(this.oracle.holders(book, day(book.county(), at), at))) {
			this.known.deferred.add(new Known.Told<>(word.id(), at));
			if (byCoordinator) {
				this.known.assented.add(new Known.Told<>(word.id(), at));
			}
			else if (chance(40)) {
				assent(word);
			}
		}
	}

	/**
	 * Whether the sign-off was refused: then nothing of it was told.
	 */
	private boolean isRefused(Known.Word word, Known.@Nullable Visit own, Rulebook ofItsDay, Instant at) {
		UUID root = root(treeOf(word.visit()));
		boolean lacking = this.oracle.lacksPhotos(word, own, root, ofItsDay, zone(this.oracle.book(root, at).county()),
				at);
		if (lacking == this.register.isSignedOff(word.id())) {
			this.misjudged.add(word + (lacking ? " was taken with too few photos" : " was refused"));
		}
		if (lacking) {
			this.known.words.removeIf((told) -> told.what().equals(word));
			this.known.visits.removeIf((told) -> told.what().id().equals(word.own()));
		}
		return lacking;
	}

	private void assentToSomething() {
		List<Known.Word> waiting = this.known.words.stream()
			.map(Known.Told::what)
			.filter((word) -> said(this.known.deferred, word) && !said(this.known.assented, word)
					&& !said(this.known.revoked, word))
			.toList();
		if (!waiting.isEmpty()) {
			assent(waiting.get(this.random.nextInt(waiting.size())));
		}
	}

	private void assent(Known.Word word) {
		UUID tree = treeOf(word.visit());
		Instant at = at(() -> this.register.assent(county(tree), tree, word.id()));
		this.known.assented.add(new Known.Told<>(word.id(), at));
	}

	private static boolean said(List<Known.Told<UUID>> what, Known.Word word) {
		return what.stream().anyMatch((told) -> told.what().equals(word.id()));
	}

	private void revokeSomething() {
		List<Known.Word> open = this.known.words.stream()
			.map(Known.Told::what)
			.filter((word) -> this.known.revoked.stream().noneMatch((told) -> told.what().equals(word.id())))
			.toList();
		if (!open.isEmpty()) {
			Known.Word word = open.get(this.random.nextInt(open.size()));
			UUID tree = treeOf(word.visit());
			Instant at = at(() -> this.register.revoke(county(tree), tree, word.id()));
			this.known.revoked.add(new Known.Told<>(word.id(), at));
		}
	}

	private void setSomethingAside() {
		List<Known.Visit> open = this.known.visits.stream()
			.map(Known.Told::what)
			.filter((visit) -> this.known.setAside.stream().noneMatch((told) -> told.what().equals(visit.id())))
			.toList();
		if (!open.isEmpty()) {
			Known.Visit visit = open.get(this.random.nextInt(open.size()));
			Instant at = at(() -> this.register.setAside(county(treeOf(visit.id())), treeOf(visit.id()), visit.id()));
			this.known.setAside.add(new Known.Told<>(visit.id(), at));
		}
	}

	private void report(UUID tree) {
		Condition condition = Condition.values()[this.random.nextInt(Condition.values().length)];
		LocalDate observed = pastDay(tree, 400);
		LocalDate began = chance(40) ? observed.minusDays(this.random.nextInt(600)) : null;
		Known.Seen seen = new Known.Seen(tree, condition, observed, began);
		this.known.seen.add(new Known.Told<>(seen, at(() -> this.register.condition(county(tree), seen))));
	}

	private void identify(UUID tree) {
		String species = species();
		Instant at = at(() -> this.register.identify(county(tree), tree, species));
		this.known.names.add(new Known.Told<>(new Known.Named(tree, species), at));
	}

	private void relocate(UUID tree) {
		String from = county(tree);
		String to = from.equals(this.counties[0]) ? this.counties[1] : this.counties[0];
		if (latestDay(tree).isAfter(day(to, this.now))) {
			return;
		}
		Instant at = at(() -> this.register.relocate(from, tree, to));
		this.known.places.add(new Known.Told<>(new Known.Placed(tree, to), at));
	}

	/**
	 * The use case refuses to move a tree to where the day of its latest fact has not
	 * begun.
	 */
	private LocalDate latestDay(UUID tree) {
		return Stream
			.of(this.known.visits.stream()
				.map(Known.Told::what)
				.filter((visit) -> root(treeOf(visit.id())).equals(tree))
				.map(Known.Visit::on),
					this.known.seen.stream()
						.map(Known.Told::what)
						.filter((seen) -> root(seen.tree()).equals(tree))
						.map(Known.Seen::observed),
					this.known.rulings.stream()
						.map(Known.Told::what)
						.filter((ruling) -> root(ruling.tree()).equals(tree))
						.map(Known.Ruling::from))
			.flatMap((days) -> days)
			.max(LocalDate::compareTo)
			.orElse(LocalDate.MIN);
	}

	private void newRules() {
		String county = this.counties[chance(75) ? 0 : 1];
		LocalDate today = day(county, this.now);
		LocalDate on = switch (this.random.nextInt(4)) {
			case 0 -> today;
			case 1 -> today.minusDays(this.random.nextInt(2000));
			case 2 -> today.plusDays(this.random.nextInt(900));
			default -> sometimesAsBefore(county, today);
		};
		Rulebook rulebook = rulebook(on);
		Instant at = at(() -> this.register.rulebook(county, rulebook));
		this.known.rules.add(new Known.Told<>(new Known.Rules(county, rulebook), at));
	}

	private LocalDate sometimesAsBefore(String county, LocalDate otherwise) {
		return this.known.rules.stream()
			.map(Known.Told::what)
			.filter((rules) -> rules.county().equals(county))
			.map((rules) -> rules.rulebook().effectiveOn())
			.reduce((one, other) -> chance(50) ? one : other)
			.orElse(otherwise);
	}

	private Rulebook rulebook(LocalDate on) {
		TieRule tie = switch (this.random.nextInt(3)) {
			case 0 -> new TieRule.WithinPoints(new BigDecimal(this.random.nextInt(4)));
			case 1 -> new TieRule.WithinPercent(new BigDecimal("0.5").multiply(new BigDecimal(this.random.nextInt(4))));
			default -> new TieRule.WithinUncertainty(new BigDecimal(this.random.nextInt(3)), new BigDecimal("2.5"));
		};
		WhenStale whenStale = WhenStale.values()[this.random.nextInt(3)];
		LocalDate spared = chance(30) ? on.plusDays(this.random.nextInt(2500)) : null;
		int forRank = chance(75) ? 1 : 2;
		int forTitle = chance(60) ? forRank : 2 + this.random.nextInt(2);
		Set<Method> methods = switch (this.random.nextInt(6)) {
			case 0, 1 -> Set.of(Method.SINE);
			case 2 -> Set.of(Method.SINE, Method.POLE, Method.TAPE);
			default -> Set.of();
		};
		return new Rulebook(on, tie, 1 + this.random.nextInt(4), whenStale, 1 + this.random.nextInt(5),
				this.random.nextInt(400), forRank, false, SlopeRule.UPHILL, Tolerances.STANDARD, spared,
				CarryForward.NONE, Rulebook.OLDEST_FILING_MONTHS, Rulebook.ANSWER_DAYS,
				new TitleRules(forTitle, chance(30), methods, chance(70) ? 0 : 1 + this.random.nextInt(2)), listed());
	}

	/**
	 * Mostly all species, else one or two.
	 */
	private @Nullable Set<String> listed() {
		return chance(85) ? null
				: Set.copyOf(List.of(this.species[this.random.nextInt(3)], this.species[this.random.nextInt(3)]));
	}

	private Known.Visit visit(UUID tree, boolean carriedOver) {
		LocalDate on = pastDay(tree, 2500);
		Known.Measures measures = measures(chance(70));
		FigureMethods methods = new FigureMethods(
				(measures.girth() != null) ? (chance(85) ? Method.TAPE : Method.BILTMORE) : null,
				(measures.height() != null) ? (chance(70) ? Method.SINE : Method.STICK) : null,
				(measures.crown() != null) ? Method.AXES : null);
		return new Known.Visit(Uuid7.next(), tree, on, measures, carriedOver,
				new CarryForward(this.random.nextInt(8), this.random.nextInt(8)), methods);
	}

	/**
	 * Figures of about 200 points; where not of a full visit, one or two are lacking.
	 */
	private Known.Measures measures(boolean full) {
		boolean height = full || chance(30);
		boolean crown = full || (!height && chance(30));
		boolean girth = full || chance(90) || !(height || crown);
		return new Known.Measures(girth ? 108 + 0.5 * this.random.nextInt(8) : null,
				height ? 80 + 0.5 * this.random.nextInt(4) : null, crown ? 48 + 2.0 * this.random.nextInt(4) : null,
				0.25 * (1 + this.random.nextInt(8)));
	}

	private void reduceAgain() {
		if (this.known.visits.isEmpty()) {
			return;
		}
		Known.Visit visit = this.known.visits.get(this.random.nextInt(this.known.visits.size())).what();
		Known.Measures before = visit.measures();
		Known.Measures measures = new Known.Measures(other(before.girth(), 0.5), other(before.height(), 0.5),
				other(before.crown(), 2), before.uncertainty());
		int version = 2
				+ (int) this.known.again.stream().filter((told) -> told.what().visit().equals(visit.id())).count();
		UUID tree = treeOf(visit.id());
		Instant at = at(() -> this.register.reduceAgain(county(tree), tree, visit.id(), version, measures));
		this.known.again.add(new Known.Told<>(new Known.Again(visit.id(), measures), at));
	}

	private @Nullable Double other(@Nullable Double figure, double step) {
		return (figure != null) ? Double.valueOf(figure + step * (this.random.nextInt(3) - 1)) : null;
	}

	private LocalDate pastDay(UUID tree, int far) {
		LocalDate today = day(county(root(tree)), this.now);
		return chance(60) ? today : today.minusDays(this.random.nextInt(far));
	}

	private UUID anyTree() {
		return this.known.trees.get(this.random.nextInt(this.known.trees.size())).what().id();
	}

	/**
	 * The tree to which a visit belongs.
	 */
	private UUID treeOf(UUID visit) {
		return this.known.assigned.stream()
			.map(Known.Told::what)
			.filter((assigned) -> assigned.visit().equals(visit))
			.reduce((earlier, later) -> later)
			.map(Known.Assigned::tree)
			.orElseGet(() -> filedFor(visit));
	}

	private UUID filedFor(UUID visit) {
		return this.known.visits.stream()
			.map(Known.Told::what)
			.filter((one) -> one.id().equals(visit))
			.findFirst()
			.orElseThrow()
			.tree();
	}

	private String county(UUID tree) {
		return this.known.places.stream()
			.map(Known.Told::what)
			.filter((placed) -> placed.tree().equals(tree))
			.reduce((earlier, later) -> later)
			.orElseThrow()
			.county();
	}

	private String species() {
		return this.species[chance(75) ? 0 : (this.thirdIsThere && chance(50)) ? 2 : 1];
	}

	/**
	 * Lets time pass: seconds, days or years, now and then to the very start of a day.
	 */
	private void pass() {
		int how = this.random.nextInt(100);
		if (how < 30) {
			this.now = this.now.plusSeconds(this.random.nextInt(4000));
		}
		else if (how < 60) {
			this.now = this.now.plus(this.random.nextInt(60), ChronoUnit.DAYS);
		}
		else if (how < 92) {
			this.now = this.now.plus(this.random.nextInt(900), ChronoUnit.DAYS);
		}
		else {
			ZoneId zone = ZONES[this.random.nextInt(2)];
			this.now = LocalDate.ofInstant(this.now, zone).plusDays(1).atStartOfDay(zone).toInstant();
		}
	}

	private Instant at(Supplier<@Nullable Instant> work) {
		Instant told = this.register.clock.replayAt(this.now, () -> {
			Instant at = work.get();
			return (at != null) ? at : this.now;
		});
		if (told.isAfter(this.now)) {
			this.now = told;
		}
		return told;
	}

	private boolean chance(int percent) {
		return this.random.nextInt(100) < percent;
	}

	private String prefix() {
		int number = PREFIXES.getAndIncrement();
		StringBuilder prefix = new StringBuilder();
		for (int letter = 0; letter < 4; letter++) {
			prefix.append((char) ('A' + number % 26));
			number /= 26;
		}
		return prefix.toString();
	}

}
