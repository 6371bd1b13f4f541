package county.bigtree.registry.people.web;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.ListPeople;
import county.bigtree.registry.people.web.RolesController.HeldRoleJson;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * The people of a county.
 */
@RestController
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class PeopleController {

	private static final String LIST = "people";

	private final ListPeople listPeople;

	PeopleController(ListPeople listPeople) {
		this.listPeople = listPeople;
	}

	@GetMapping("/api/v1/people")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	@Operation(operationId = "listPeople",
			summary = "The people of a county with their roles, or all of the service, now or on any day")
	Page<PersonJson> list(@RequestParam(required = false) @Nullable String county,
			@RequestParam(required = false) @Nullable LocalDate on, Paging paging, Actor actor) {
		ListPeople.After after = paging.cursor(LIST, 2)
			.map((cursor) -> new ListPeople.After(cursor.string(0), cursor.uuid(1)))
			.orElse(null);
		return Page.cut(this.listPeople.list(actor, county, on, after, paging.oneMore()), paging, PersonJson::from,
				(last) -> Cursor.of(LIST, last.creditName(), last.id()));
	}

	/**
	 * A person in the list.
	 *
	 * @param active false where the account was closed
	 * @param roles those held now, or at any time of the day asked for
	 */
	record PersonJson(UUID id, String email, String creditName, boolean active, List<HeldRoleJson> roles) {

		static PersonJson from(ListPeople.Listed person) {
			return new PersonJson(person.id(), person.email(), person.creditName(), person.active(),
					person.roles().stream().map(HeldRoleJson::from).toList());
		}

	}

}
