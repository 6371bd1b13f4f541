package county.bigtree.registry.pages;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.standing.Title;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.lookup.ReadScores;
import county.bigtree.registry.lookup.ReadTrees;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.measurement.MeasurementJson;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.pages.picture.ScoreHistoryPicture;
import county.bigtree.registry.pages.picture.ScoreHistoryPicture.Scored;
import county.bigtree.registry.photo.Photos;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadTitles;
import county.bigtree.registry.story.TellStory;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * A tree: its photos, what its points are made of, where it stands, its score history and
 * every measurement with its working.
 */
@Controller
@Hidden
class TreePage {

	private static final Instant BEGINNING = Instant.EPOCH.minusSeconds(10_000_000_000L);

	private static final int STORY = 40;

	private final CountyOfPage counties;

	private final SpeciesCatalogue species;

	private final Reads reads;

	private final MessageSource messages;

	private final RegisterClock clock;

	TreePage(CountyOfPage counties, SpeciesCatalogue species, Reads reads, MessageSource messages,
			RegisterClock clock) {
		this.counties = counties;
		this.species = species;
		this.reads = reads;
		this.messages = messages;
		this.clock = clock;
	}

	@GetMapping("/trees/{tree}")
	@Access(Who.ANYONE)
	String tree(@PathVariable String tree, @ModelAttribute("units") Units units, Model model) {
		TreeSummary named = find(tree);
		if (named.merged()) {
			return "redirect:/trees/" + named.kept();
		}
		ReadCounties.County county = this.counties.get(named.county());
		TreeSummary present = find(tree);
		Words words = CountyOfPage.words(county, units);
		List<ReadScores.ScoreOfDay> scores = this.reads.scores().of(present.id());
		List<MeasurementJson> measurements = this.reads.measurements()
			.of(present.id())
			.stream()
			.filter((one) -> one.status().equals("counting") || one.status().equals("superseded"))
			.map((one) -> this.reads.measurements().json(one).toThePublic())
			.toList();
		model.addAttribute("county", county);
		model.addAttribute("tree", present);
		model.addAttribute("called", called(present));
		model.addAttribute("species", this.species.get(present.species()));
		model.addAttribute("words", words);
		Map<ReadScores.ScoreOfDay, Counted> counted = counted(scores, measurements);
		model.addAttribute("history", scores);
		model.addAttribute("counted", counted);
		model.addAttribute("withdrawn", scores.stream().anyMatch((score) -> score.withdrawnAt() != null));
		model.addAttribute("current",
				scores.stream().filter((score) -> isCurrent(score, present)).findFirst().orElse(null));
		model.addAttribute("measurements", measurements);
		model.addAttribute("photos",
				this.reads.photos().publishedOf(present.id()).stream().map(PhotoOnPage::of).toList());
		model.addAttribute("story", this.reads.stories().ofTree(null, present.id(), BEGINNING, STORY));
		if (!scores.isEmpty()) {
			model.addAttribute("picture", picture(scores, counted, words));
		}
		return "tree";
	}

	@GetMapping("/t/{tag}")
	@Access(Who.ANYONE)
	String byTag(@PathVariable String tag) {
		return "redirect:/trees/" + find(tag).tag();
	}

	private TreeSummary find(String tree) {
		return this.reads.trees()
			.find(tree, null)
			.orElseThrow(() -> Problem.notFound("No public tree has this id or tag."));
	}

	/** What the tree is called: each of those who share a title is a co-champion. */
	private @Nullable String called(TreeSummary tree) {
		String title = tree.title();
		return (title != null && this.reads.titles().isShared(new BookKey(tree.county(), tree.species())))
				? Title.CO_CHAMPION.word() : title;
	}

	private static boolean isCurrent(ReadScores.ScoreOfDay score, TreeSummary tree) {
		return tree.score() != null && score.withdrawnAt() == null
				&& score.measurement().equals(tree.score().measurement());
	}

	private ScoreHistoryPicture picture(List<ReadScores.ScoreOfDay> scores, Map<ReadScores.ScoreOfDay, Counted> counted,
			Words words) {
		List<Scored> drawn = scores.stream().map((score) -> {
			Counted how = Objects.requireNonNull(counted.get(score));
			String told = "%s: %s ± %s".formatted(words.known(score.measured()), words.points(score.points()),
					words.points(score.pointsU().doubleValue()));
			return new Scored(score.measuredOn(), score.points().doubleValue(), score.pointsU().doubleValue(),
					how.how(), told, message("how." + how.how()), how.heightBy());
		}).toList();
		return ScoreHistoryPicture.of(drawn, words.date(this.clock.now()));
	}

	/** How each of the scores came to count. */
	private Map<ReadScores.ScoreOfDay, Counted> counted(List<ReadScores.ScoreOfDay> scores,
			List<MeasurementJson> measurements) {
		Map<UUID, MeasurementJson> known = measurements.stream()
			.collect(Collectors.toMap(MeasurementJson::id, Function.identity()));
		Map<ReadScores.ScoreOfDay, Counted> counted = new HashMap<>();
		for (ReadScores.ScoreOfDay score : scores) {
			MeasurementJson measurement = known.get(score.measurement());
			String basis = score.carriedOver() ? "carried-over" : (measurement != null) ? measurement.basis() : "filed";
			String how = Scored.how(basis, score.withdrawnAt());
			counted.put(score, new Counted(how, methods(measurement)));
		}
		return counted;
	}

	private List<String> methods(@Nullable MeasurementJson measurement) {
		return (measurement == null) ? List.of()
				: Stream.of("girth", "height", "crown")
					.map((figure) -> measurement.readings().path(figure).path("method").asString(""))
					.filter((method) -> !method.isEmpty())
					.map((method) -> message("method." + method))
					.toList();
	}

	private String message(String key) {
		return Objects.requireNonNull(this.messages.getMessage(key, null, Locale.US));
	}

	/**
	 * How a score came to count.
	 *
	 * @param how confirmed, checked, carried-over or withdrawn
	 * @param methods by which girth, height and crown were measured, in words
	 */
	record Counted(String how, List<String> methods) {

		String heightBy() {
			return (this.methods.size() < 2) ? "" : this.methods.get(1);
		}

	}

	/**
	 * What the page is made of.
	 */
	@org.springframework.stereotype.Component("treePageReads")
	record Reads(ReadTrees trees, ReadScores scores, ReadMeasurements measurements, Photos photos, TellStory stories,
			ReadTitles titles) {
	}

}
