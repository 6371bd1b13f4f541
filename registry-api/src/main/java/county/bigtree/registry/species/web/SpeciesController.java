package county.bigtree.registry.species.web;

import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.Valid;
import county.bigtree.registry.standing.FoldSpecies;
import county.bigtree.registry.species.AddedSpeciesBody;
import county.bigtree.registry.species.AddSpecies;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.http.DryRun;
import java.net.URI;
import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.species.SpeciesName;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * The species that a tree can be.
 */
@RestController
@Tag(name = "Species", description = "The species that a tree can be, found by any of their names.")
class SpeciesController {

	private static final String LIST = "species";

	private static final int LONGEST_QUERY = 200;

	private static final int FARTHEST = 1_000_000;

	private final SpeciesCatalogue catalogue;

	private final AddSpecies addSpecies;

	private final FoldSpecies foldSpecies;

	SpeciesController(SpeciesCatalogue catalogue, AddSpecies addSpecies, FoldSpecies foldSpecies) {
		this.catalogue = catalogue;
		this.addSpecies = addSpecies;
		this.foldSpecies = foldSpecies;
	}

	@GetMapping("/api/v1/species")
	@Access(Who.ANYONE)
	@Operation(operationId = "listSpecies",
			summary = "Species by a part of a scientific or common name or of a symbol, closest first; misspelt ones are found too")
	Page<SpeciesItem> list(
			@Parameter(example = "sycamor") @RequestParam(required = false, defaultValue = "") String query,
			@Parameter(description = "Only species of which trees are ranked in this county",
					example = "larkmere") @RequestParam(required = false) @Nullable String county,
			Paging paging) {
		if (query.length() > LONGEST_QUERY) {
			throw Problem
				.of(ProblemType.INVALID_PARAMETER, "The query must have at most " + LONGEST_QUERY + " characters.")
				.with("parameter", "query");
		}
		int offset = paging.cursor(LIST, 1).map(SpeciesController::offset).orElse(0);
		List<Species> found = this.catalogue.search(query, county, offset, paging.oneMore());
		return Page.cut(found, paging, SpeciesItem::from, (last) -> Cursor.of(LIST, offset + paging.limit()));
	}

	private static int offset(Cursor cursor) {
		return (int) Math.max(0, Math.min(cursor.number(0), FARTHEST));
	}

	@GetMapping("/api/v1/species/{species}")
	@Access(Who.ANYONE)
	@Operation(operationId = "getSpecies", summary = "A species with every name that leads to it")
	SpeciesJson get(@Parameter(example = "quercus-alba") @PathVariable String species) {
		return this.catalogue.find(species)
			.map((found) -> SpeciesJson.from(found, this.catalogue.listNames(species),
					this.catalogue.foldedInto(species).orElse(null)))
			.orElseThrow(() -> Problem.notFound("No species has this key. Search for it by name."));
	}

	@PostMapping("/api/v1/species")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "addSpecies", summary = "Add a species that the catalogue lacks")
	ResponseEntity<SpeciesJson> add(@RequestBody @Valid AddedSpeciesBody body, Actor actor) {
		String key = this.addSpecies.add(actor, body);
		return ResponseEntity.created(URI.create("/api/v1/species/" + key)).body(get(key));
	}

	@PostMapping("/api/v1/species/{species}/fold")
	@DryRun
	@Access(Who.ADMINISTRATOR)
	@Operation(operationId = "foldSpecies", summary = "Fold a species into another, in all counties")
	SpeciesJson fold(@PathVariable String species, @RequestBody @Valid FoldBody body, Actor actor) {
		get(species);
		if (this.catalogue.find(body.into()).filter(Species::rankable).isEmpty()) {
			throw Problem.invalid("#/into", "unknown", "must be the key of a species that is ranked");
		}
		String refusal = this.foldSpecies.fold(actor.id(), species, body.into(), body.reason());
		if (!refusal.isEmpty()) {
			throw Problem.of(ProblemType.CONFLICT, refusal);
		}
		return get(species);
	}

	/**
	 * Into what a species is folded, and why.
	 */
	record FoldBody(@NotBlank String into, @NotBlank String reason) {
	}

	/**
	 * A species in the list.
	 *
	 * @param rankable false for a genus: its trees are kept and not ranked
	 */
	record SpeciesItem(String key, String scientificName, String commonName, String genus, boolean hybrid,
			boolean conifer, boolean rankable, @Nullable Integer fiaCode, @Nullable String plantsSymbol) {

		static SpeciesItem from(Species species) {
			return new SpeciesItem(species.key(), species.scientificName(), species.commonName(), species.genus(),
					species.hybrid(), species.conifer(), species.rankable(), species.fiaCode(), species.plantsSymbol());
		}

	}

	/**
	 * A species by itself.
	 *
	 * @param rankable false for a genus: its trees are kept and not ranked
	 * @param source where the entry was taken from
	 * @param names every name that leads to it, the accepted one first
	 * @param foldedInto the species under which its trees are ranked, if that is another
	 */
	record SpeciesJson(String key, String scientificName, String commonName, String genus, @Nullable String epithet,
			@Nullable String infraspecificRank, @Nullable String infraspecificName, boolean hybrid, boolean conifer,
			boolean rankable, @Nullable Integer fiaCode, @Nullable String plantsSymbol, String source,
			List<SpeciesName> names, @Nullable String foldedInto) {

		static SpeciesJson from(Species species, List<SpeciesName> names, @Nullable String foldedInto) {
			return new SpeciesJson(species.key(), species.scientificName(), species.commonName(), species.genus(),
					species.epithet(), species.infraspecificRank(), species.infraspecificName(), species.hybrid(),
					species.conifer(), species.rankable(), species.fiaCode(), species.plantsSymbol(), species.source(),
					names, foldedInto);
		}

	}

}
