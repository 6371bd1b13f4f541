package county.bigtree.registry.county.web;

import county.bigtree.registry.http.DryRun;
import org.springframework.web.bind.annotation.PatchMapping;
import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.county.CountyChangeBody;
import county.bigtree.registry.county.ChangeCounty;
import java.net.URI;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.AddRulebook;
import county.bigtree.registry.county.CountyBody;
import county.bigtree.registry.county.FoundCounty;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.RulebookJson;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Counties and their rules.
 */
@RestController
@Tag(name = "Counties", description = "Counties and their rules.")
class CountyController {

	private static final String COUNTIES = "counties";

	private final ReadCounties counties;

	private final FoundCounty founding;

	private final ChangeCounty changeCounty;

	private final AddRulebook addRulebook;

	CountyController(ReadCounties counties, FoundCounty founding, ChangeCounty changeCounty, AddRulebook addRulebook) {
		this.counties = counties;
		this.founding = founding;
		this.changeCounty = changeCounty;
		this.addRulebook = addRulebook;
	}

	@GetMapping("/api/v1/counties")
	@Access(Who.ANYONE)
	@Operation(operationId = "listCounties", summary = "The counties of this register")
	Page<CountyJson> list(Paging paging) {
		String after = paging.cursor(COUNTIES, 1).map((cursor) -> cursor.string(0)).orElse("");
		return Page.cut(this.counties.list(after, paging.oneMore()), paging, (county) -> CountyJson.from(county, null),
				(last) -> Cursor.of(COUNTIES, last.key()));
	}

	@GetMapping("/api/v1/counties/{county}")
	@Access(Who.ANYONE)
	@Operation(operationId = "getCounty", summary = "A county with its boundary")
	CountyJson get(@PathVariable String county) {
		ReadCounties.County found = find(county);
		return CountyJson.from(found, this.counties.boundary(found));
	}

	@PostMapping("/api/v1/counties")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.ADMINISTRATOR)
	@Operation(operationId = "foundCounty", summary = "Found a county with its first rulebook")
	ResponseEntity<CountyJson> found(@RequestBody @Valid CountyBody body, Actor actor) {
		this.founding.found(actor, body);
		return ResponseEntity.created(URI.create("/api/v1/counties/" + body.key())).body(get(body.key()));
	}

	@PatchMapping("/api/v1/counties/{county}")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "changeCounty", summary = "Change a county's name, state or boundary")
	CountyJson change(@PathVariable String county, @RequestBody @Valid CountyChangeBody body, IfMatch ifMatch,
			Actor actor) {
		find(county);
		this.changeCounty.change(actor, county, body, (revision) -> ifMatch.require(revision, () -> get(county)));
		return get(county);
	}

	@GetMapping("/api/v1/counties/{county}/rulebooks")
	@Access(Who.ANYONE)
	@Operation(operationId = "listRulebooks",
			summary = "The rules of a county by effective date, the latest first; for its coordinators with their reasons")
	Page<RulebookJson> rulebooks(@PathVariable String county, @Nullable Actor actor) {
		boolean coordinates = actor != null && actor.isCoordinatorOf(county);
		return Page.whole(this.counties.rulebooks(find(county).key(), coordinates));
	}

	@PostMapping("/api/v1/counties/{county}/rulebooks")
	@ResponseStatus(HttpStatus.CREATED)
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "addRulebook", summary = "Add a rulebook, in force from its date on")
	ResponseEntity<RulebookJson> addRulebook(@PathVariable String county, @RequestBody @Valid RulebookJson body,
			@Parameter(hidden = true) @RequestParam(required = false, defaultValue = "false") boolean dryRun,
			Actor actor) {
		find(county);
		this.addRulebook.add(actor, county, body, body.reason(), dryRun);
		return ResponseEntity.created(URI.create("/api/v1/counties/" + county + "/rulebooks")).body(body);
	}

	private ReadCounties.County find(String county) {
		return this.counties.find(county).orElseThrow(() -> Problem.notFound("No county has this key."));
	}

	/**
	 * A county.
	 *
	 * @param boundary only in the answer for the one county
	 */
	record CountyJson(String key, String name, String state, String timeZone, String tagPrefix, boolean practice,
			int trees, int species, int titles,
			@Nullable @Schema(ref = "#/components/schemas/Geometry") JsonNode boundary,
			@JsonIgnore long revision) implements Revisioned {

		static CountyJson from(ReadCounties.County county,
				@Nullable @Schema(ref = "#/components/schemas/Geometry") JsonNode boundary) {
			return new CountyJson(county.key(), county.name(), county.state(), county.timeZone(), county.tagPrefix(),
					county.practice(), county.trees(), county.species(), county.titles(), boundary, county.revision());
		}

	}

}
