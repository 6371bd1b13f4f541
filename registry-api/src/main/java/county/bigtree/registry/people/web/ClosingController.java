package county.bigtree.registry.people.web;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.CloseAccount;
import county.bigtree.registry.people.EraseAccount;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Closing and erasing others' accounts.
 */
@RestController
@RequestMapping("/api/v1/people/{person}")
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class ClosingController {

	private final CloseAccount closeAccount;

	private final EraseAccount eraseAccount;

	ClosingController(CloseAccount closeAccount, EraseAccount eraseAccount) {
		this.closeAccount = closeAccount;
		this.eraseAccount = eraseAccount;
	}

	@PostMapping("/deactivation")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "deactivate",
			summary = "Close an account: sessions, tokens and roles end at once, open work goes back")
	void close(@PathVariable UUID person, Actor actor) {
		this.closeAccount.close(actor, person);
	}

	@PostMapping("/activation")
	@Access(Who.ADMINISTRATOR)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "activate", summary = "Open a closed account again, without any role")
	void open(@PathVariable UUID person) {
		this.closeAccount.open(person);
	}

	@PostMapping("/erasure")
	@Access(Who.ADMINISTRATOR)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "erase", summary = "Erase someone's account, name and words for good; the facts stay")
	void erase(@PathVariable UUID person, Actor actor) {
		this.eraseAccount.erase(person, actor.id());
	}

}
