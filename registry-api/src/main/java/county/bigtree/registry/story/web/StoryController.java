package county.bigtree.registry.story.web;

import java.net.URI;
import java.time.Instant;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.standing.ReadStandings;
import county.bigtree.registry.story.FindStoryTree;
import county.bigtree.registry.story.Story;
import county.bigtree.registry.story.TellStory;
import county.bigtree.registry.tree.TreeDirectory;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.headers.Header;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * What happened, told in order.
 */
@RestController
@Tag(name = "Stories", description = "What happened, told in order.")
class StoryController {

	private static final String STORY = "story";

	// The register is younger.
	private static final Instant BEGINNING = Instant.parse("1800-01-01T00:00:00Z");

	private final TellStory tell;

	private final FindStoryTree trees;

	private final ReadStandings standings;

	private final SpeciesCatalogue species;

	private final CatchUp catchUp;

	StoryController(TellStory tell, FindStoryTree trees, ReadStandings standings, SpeciesCatalogue species,
			CatchUp catchUp) {
		this.tell = tell;
		this.trees = trees;
		this.standings = standings;
		this.species = species;
		this.catchUp = catchUp;
	}

	@GetMapping("/api/v1/trees/{tree}/story")
	@Access(Who.ANYONE)
	@Operation(operationId = "getTreeStory",
			summary = "What happened to a tree, in order of recording, with what each change did to scores, first places and titles")
	@ApiResponse(responseCode = "200", description = "The story")
	@ApiResponse(responseCode = "307",
			description = "It was merged: the story of the tree that is kept is at the Location",
			headers = @Header(name = "Location", required = true, schema = @Schema(type = "string")),
			content = @Content)
	ResponseEntity<StoryJson> ofTree(@PathVariable String tree, Paging paging, @Nullable Actor actor) {
		TreeDirectory.KnownTree found = this.trees.find(tree, actor);
		if (found.merged()) {
			return ResponseEntity.status(HttpStatus.TEMPORARY_REDIRECT)
				.location(URI.create("/api/v1/trees/" + found.kept() + "/story"))
				.build();
		}
		this.catchUp.county(found.county());
		Story story = this.tell.ofTree(actor, found.id(), after(paging), paging.limit());
		return ResponseEntity.ok(StoryJson.from(story, next(story)));
	}

	@GetMapping("/api/v1/counties/{county}/species/{species}/story")
	@Access(Who.ANYONE)
	@Operation(operationId = "getSpeciesStory",
			summary = "What happened to the trees of a species in a county, in order of recording")
	StoryJson ofSpecies(@PathVariable String county, @PathVariable String species, Paging paging,
			@Nullable Actor actor) {
		if (!this.standings.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		if (this.species.find(species).isEmpty()) {
			throw Problem.notFound("No species has this key.");
		}
		this.catchUp.county(county);
		Story story = this.tell.ofSpecies(actor, new BookKey(county, species), after(paging), paging.limit());
		return StoryJson.from(story, next(story));
	}

	private static Instant after(Paging paging) {
		return paging.cursor(STORY, 1).map((cursor) -> cursor.instant(0)).orElse(BEGINNING);
	}

	private static @Nullable String next(Story story) {
		return (story.last() != null) ? Cursor.of(STORY, story.last()).text() : null;
	}

}
