package county.bigtree.registry.edition.web;

import java.net.URI;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.edition.AnnounceEdition;
import county.bigtree.registry.edition.Edition;
import county.bigtree.registry.edition.EditionBody;
import county.bigtree.registry.edition.EditionChanges;
import county.bigtree.registry.edition.EditionFiles;
import county.bigtree.registry.edition.EditionList;
import county.bigtree.registry.edition.Editions;
import county.bigtree.registry.edition.PublishEdition;
import county.bigtree.registry.http.DryRun;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Editions.
 */
@RestController
@Tag(name = "Editions", description = "A county's published lists, kept as they were published.")
class EditionController {

	private final Editions editions;

	private final AnnounceEdition announcing;

	private final PublishEdition publishing;

	private final Published published;

	private final ReadStandings counties;

	EditionController(Editions editions, AnnounceEdition announcing, PublishEdition publishing, Published published,
			ReadStandings counties) {
		this.editions = editions;
		this.announcing = announcing;
		this.publishing = publishing;
		this.published = published;
		this.counties = counties;
	}

	@GetMapping("/api/v1/counties/{county}/editions")
	@Access(Who.ANYONE)
	@Operation(operationId = "listEditions",
			summary = "The published lists of a county and those announced, the latest day first")
	Page<Edition> list(@PathVariable String county) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		return Page.whole(this.editions.of(county));
	}

	@PostMapping("/api/v1/counties/{county}/editions")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "announceEdition",
			summary = "Announce an edition: by when to file, and of which day it is")
	ResponseEntity<Edition> announce(@PathVariable String county, @RequestBody @Valid EditionBody body, Actor actor) {
		UUID id = this.announcing.announce(actor, county, body);
		return ResponseEntity.created(URI.create("/api/v1/editions/" + id)).body(this.editions.get(id));
	}

	@GetMapping("/api/v1/editions/{edition}")
	@Access(Who.ANYONE)
	@Operation(operationId = "getEdition",
			summary = "An edition: its days, and once published the digests of its files")
	Edition get(@PathVariable UUID edition) {
		return this.editions.get(edition);
	}

	@PostMapping("/api/v1/editions/{edition}/publication")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "publishEdition",
			summary = "Publish an edition whose day is past: the standings of that day as known now, for good")
	Edition publish(@PathVariable UUID edition, IfMatch ifMatch, Actor actor) {
		this.publishing.publish(actor, edition, (revision) -> ifMatch.require(revision, () -> get(edition)));
		return this.editions.get(edition);
	}

	@GetMapping("/api/v1/editions/{edition}/list")
	@Access(Who.ANYONE)
	@Operation(operationId = "getEditionList",
			summary = "What an edition published, without trees that their owners let nobody show today")
	EditionListJson rankings(@PathVariable UUID edition) {
		EditionFiles.Shown shown = this.published.list(edition);
		return new EditionListJson(shown.asPublished(), shown.list());
	}

	@GetMapping("/api/v1/editions/{edition}/changes")
	@Access(Who.ANYONE)
	@Operation(operationId = "getEditionChanges", summary = "What is otherwise in an edition than in the one before")
	EditionChanges.SinceEdition changes(@PathVariable UUID edition) {
		return this.published.changes(edition);
	}

	@GetMapping("/api/v1/editions/{edition}/errata")
	@Access(Who.ANYONE)
	@Operation(operationId = "listErrata", summary = "What turned out wrong in an edition, the earliest first")
	Page<Editions.Erratum> errata(@PathVariable UUID edition) {
		return Page.whole(this.published.errata(edition));
	}

	@PostMapping("/api/v1/editions/{edition}/errata")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "noteErratum", summary = "Note what turned out wrong in a published edition")
	ResponseEntity<Editions.Erratum> note(@PathVariable UUID edition, @RequestBody @Valid ErratumBody body,
			Actor actor) {
		UUID id = this.publishing.note(actor, edition, body.tree(), body.text());
		List<Editions.Erratum> errata = this.editions.errata(edition);
		return ResponseEntity.created(URI.create("/api/v1/editions/" + edition + "/errata"))
			.body(errata.stream().filter((one) -> one.id().equals(id)).findFirst().orElseThrow());
	}

	/**
	 * A published list.
	 *
	 * @param asPublished whether it is the one that was published; else trees are left
	 * out of it since, at their owners' wish
	 */
	record EditionListJson(boolean asPublished, EditionList list) {
	}

	/**
	 * What is wrong, and what is right.
	 *
	 * @param tree id or tag of the tree that it concerns, if it is one
	 */
	record ErratumBody(@Nullable @Size(max = 60) String tree, @NotNull @Size(min = 1, max = 2000) String text) {
	}

}
