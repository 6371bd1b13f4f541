package county.bigtree.registry.people.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.CountyRole;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Who is asking.
 */
@RestController
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class SessionController {

	@GetMapping("/api/v1/session")
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "getSession", summary = "Who you are and which roles you hold")
	Session session(Actor actor) {
		return Session.from(actor);
	}

	/**
	 * The one who asks.
	 *
	 * @param person their id
	 * @param roles the highest in each county
	 */
	record Session(UUID person, String creditName, boolean administrator, List<RoleJson> roles) {

		static Session from(Actor actor) {
			return new Session(actor.id(), actor.creditName(), actor.administrator(),
					actor.roles()
						.entrySet()
						.stream()
						.sorted(Map.Entry.comparingByKey())
						.map((held) -> RoleJson.from(CountyRole.of(held.getKey(), held.getValue())))
						.toList());
		}

	}

}
