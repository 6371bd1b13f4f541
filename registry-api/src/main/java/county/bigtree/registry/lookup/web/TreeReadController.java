package county.bigtree.registry.lookup.web;

import org.springframework.http.ResponseEntity;
import org.springframework.http.HttpStatus;
import java.net.URI;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import io.swagger.v3.oas.annotations.Parameter;
import county.bigtree.registry.people.Actor;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.place.Position;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.lookup.ReadScores;
import county.bigtree.registry.lookup.ReadTrees;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.CatchUp;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.headers.Header;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import com.fasterxml.jackson.annotation.JsonIgnore;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Trees as the public may see them.
 */
@RestController
@Tag(name = "Trees", description = "Trees as the public may see them, and what coordinators decide on them.")
class TreeReadController {

	private static final String TREES = "trees";

	private final ReadTrees trees;

	private final ReadScores scores;

	private final CatchUp catchUp;

	TreeReadController(ReadTrees trees, ReadScores scores, CatchUp catchUp) {
		this.trees = trees;
		this.scores = scores;
		this.catchUp = catchUp;
	}

	@GetMapping("/api/v1/trees")
	@Access(Who.ANYONE)
	@Operation(operationId = "listTrees", summary = "Accepted trees in the order of their tags")
	Page<TreeJson> list(@RequestParam(required = false) @Nullable String county,
			@RequestParam(required = false) @Nullable String species,
			@Parameter(description = "The tree of this tag alone",
					example = "LM-0042") @RequestParam(required = false) @Nullable String tag,
			@Parameter(description = "Part of a popular name or of a name of the species, or the beginning of a tag",
					example = "sycamore") @RequestParam(required = false) @Nullable String query,
			Paging paging) {
		if (tag != null) {
			return Page.whole(this.trees.find(tag, null)
				.filter((found) -> found.tag().equals(tag))
				.map(TreeJson::from)
				.stream()
				.toList());
		}
		String after = paging.cursor(TREES, 1).map((cursor) -> cursor.string(0)).orElse("");
		return Page.cut(this.trees.list(county, species, query, after, paging.oneMore()), paging, TreeJson::from,
				(last) -> Cursor.of(TREES, last.tag()));
	}

	@GetMapping("/api/v1/trees/{tree}")
	@Access(Who.ANYONE)
	@Operation(operationId = "getTree",
			summary = "A tree, by id or tag: for anyone once it is accepted, before for its people; the address of one that was merged leads to the tree that is kept")
	@ApiResponse(responseCode = "200", description = "The tree")
	@ApiResponse(responseCode = "307", description = "It was merged: the tree that is kept stands at the Location",
			headers = @Header(name = "Location", required = true, schema = @Schema(type = "string")),
			content = @Content)
	ResponseEntity<TreeJson> get(@PathVariable String tree, @Nullable Actor actor) {
		TreeSummary found = present(tree, actor);
		return found.merged() ? ResponseEntity.status(HttpStatus.TEMPORARY_REDIRECT)
			.location(URI.create("/api/v1/trees/" + found.kept()))
			.eTag("\"" + found.revision() + "-merged\"")
			.build() : ResponseEntity.ok(TreeJson.from(found));
	}

	@GetMapping("/api/v1/trees/{tree}/scores")
	@Access(Who.ANYONE)
	@Operation(operationId = "listScores", summary = "The score history of a tree")
	Page<ScoreJson> scores(@PathVariable String tree, @Nullable Actor actor) {
		return Page.whole(this.scores.of(present(tree, actor).id()).stream().map(ScoreJson::from).toList());
	}

	private TreeSummary present(String tree, @Nullable Actor actor) {
		TreeSummary found = find(tree, actor);
		this.catchUp.county(found.county());
		return find(tree, actor);
	}

	private TreeSummary find(String tree, @Nullable Actor actor) {
		return this.trees.find(tree, actor).orElseThrow(() -> Problem.notFound("No public tree has this id or tag."));
	}

	/**
	 * A tree.
	 *
	 * @param listed whether it is public; one that an owner does not let be listed is
	 * shown to its people only
	 * @param foundBy the name by which its finder is credited, if one is
	 */
	record TreeJson(UUID id, String tag, @Nullable String fileTag, @Nullable String popularName, String county,
			String species, @Nullable PositionJson position, String condition, @Nullable LocalDate lastSeenOn,
			TreeJson.@Nullable StandingJson score, @Nullable String title, @Nullable Instant titleSince,
			boolean eligible, boolean accepted, boolean listed, @Nullable String foundBy,
			@JsonIgnore long revision) implements Revisioned {

		static TreeJson from(TreeSummary tree) {
			TreeSummary.Standing standing = tree.score();
			return new TreeJson(tree.id(), tree.tag(), tree.fileTag(), tree.popularName(), tree.county(),
					tree.species(), tree.shown().map(PositionJson::from).orElse(null), tree.condition(),
					tree.lastSeenOn(), (standing != null) ? StandingJson.from(standing) : null, tree.title(),
					tree.titleSince(), tree.eligible(), tree.accepted(), tree.listed(), tree.foundBy(),
					tree.revision());
		}

		/**
		 * The present score.
		 */
		record StandingJson(int rank, BigDecimal points, BigDecimal pointsStandardUncertainty, KnownDay measuredOn,
				LocalDate effectiveOn, boolean damaged, boolean carriedOver, UUID measurement) {

			static StandingJson from(TreeSummary.Standing standing) {
				return new StandingJson(standing.rank(), standing.points(),
						rounded(standing.pointsStandardUncertainty()), standing.measured(), standing.measuredOn(),
						standing.damaged(), standing.carriedOver(), standing.measurement());
			}

		}

	}

	/**
	 * A position as shown.
	 */
	record PositionJson(double latitude, double longitude, double accuracyMetres) {

		static PositionJson from(Position position) {
			return new PositionJson(position.latitude(), position.longitude(), position.accuracyMetres());
		}

	}

	/**
	 * A score of the history.
	 *
	 * @param measuredOn the measuring day as exactly as it is known
	 * @param heightMeasuredOn the day of the height where an earlier visit's stands in
	 * @param crownMeasuredOn the day of the crown spread where an earlier visit's stands
	 * in
	 */
	record ScoreJson(BigDecimal points, BigDecimal pointsStandardUncertainty, BigDecimal girthInches,
			BigDecimal girthInchesStandardUncertainty, BigDecimal heightFeet, BigDecimal heightFeetStandardUncertainty,
			@Nullable LocalDate heightMeasuredOn, BigDecimal crownSpreadFeet,
			BigDecimal crownSpreadFeetStandardUncertainty, @Nullable LocalDate crownMeasuredOn, KnownDay measuredOn,
			LocalDate effectiveOn, Instant recordedAt, @Nullable Instant withdrawnAt, @Nullable String withdrawn,
			boolean carriedOver, String species, UUID measurement) {

		static ScoreJson from(ReadScores.ScoreOfDay score) {
			return new ScoreJson(score.points(), rounded(score.pointsU()), rounded(score.girthInches()),
					rounded(score.girthU()), rounded(score.heightFeet()), rounded(score.heightU()), score.heightOn(),
					rounded(score.crownFeet()), rounded(score.crownU()), score.crownOn(), score.measured(),
					score.measuredOn(), score.recordedAt(), score.withdrawnAt(), score.withdrawn(), score.carriedOver(),
					score.species(), score.measurement());
		}

	}

	private static BigDecimal rounded(BigDecimal value) {
		return value.setScale(2, RoundingMode.HALF_UP);
	}

}
