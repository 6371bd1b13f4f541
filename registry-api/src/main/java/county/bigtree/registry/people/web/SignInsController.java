package county.bigtree.registry.people.web;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.ListSignIns;
import county.bigtree.registry.people.SignInEvent;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * What happened at the door.
 */
@RestController
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class SignInsController {

	private static final String LIST = "sign-ins";

	private final ListSignIns listSignIns;

	SignInsController(ListSignIns listSignIns) {
		this.listSignIns = listSignIns;
	}

	@GetMapping("/api/v1/people/me/sign-ins")
	@Access(value = Who.SIGNED_IN, account = true)
	@Operation(operationId = "listOwnSignIns",
			summary = "Sign-ins to your account, the failed ones included, newest first")
	Page<SignInJson> own(Paging paging, Actor actor) {
		return page(actor.id(), paging);
	}

	@GetMapping("/api/v1/sign-ins")
	@Access(Who.ADMINISTRATOR)
	@Operation(operationId = "listSignIns", summary = "Sign-ins of one person or of all, newest first")
	Page<SignInJson> all(@RequestParam(required = false) @Nullable UUID person, Paging paging) {
		return page(person, paging);
	}

	private Page<SignInJson> page(@Nullable UUID person, Paging paging) {
		UUID before = paging.cursor(LIST, 1).map((cursor) -> cursor.uuid(0)).orElse(null);
		List<ListSignIns.Happened> found = this.listSignIns.list(person, before, paging.oneMore());
		return Page.cut(found, paging, SignInJson::from, (last) -> Cursor.of(LIST, last.id()));
	}

	/**
	 * Something that happened.
	 *
	 * @param person null where it failed
	 * @param network where it came from: an IPv4 address, or 64 bits of an IPv6 address
	 */
	record SignInJson(Instant at, SignInEvent event, @Nullable UUID person, String network) {

		static SignInJson from(ListSignIns.Happened happened) {
			return new SignInJson(happened.at(), happened.event(), happened.person(), happened.network());
		}

	}

}
