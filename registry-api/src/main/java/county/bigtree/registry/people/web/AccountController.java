package county.bigtree.registry.people.web;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.ClientNetwork;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.EraseAccount;
import county.bigtree.registry.people.ListOwnWords;
import county.bigtree.registry.people.ListRoles;
import county.bigtree.registry.people.OwnAccount;
import county.bigtree.registry.people.web.RolesController.HeldRoleJson;
import county.bigtree.registry.session.PersonSession;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * What the register keeps of the one who asks: to see, to change and to take away.
 */
@RestController
@RequestMapping("/api/v1/people/me")
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class AccountController {

	private static final String WORDS = "own-words";

	private final OwnAccount account;

	private final ListRoles listRoles;

	private final ListOwnWords listOwnWords;

	private final EraseAccount eraseAccount;

	AccountController(OwnAccount account, ListRoles listRoles, ListOwnWords listOwnWords, EraseAccount eraseAccount) {
		this.account = account;
		this.listRoles = listRoles;
		this.listOwnWords = listOwnWords;
		this.eraseAccount = eraseAccount;
	}

	@GetMapping
	@Access(value = Who.SIGNED_IN, account = true)
	@Operation(operationId = "getAccount", summary = "What is kept of you yourself, with every role you ever held")
	AccountJson read(Actor actor) {
		return json(actor, this.account.read(actor));
	}

	@PatchMapping
	@Access(value = Who.SIGNED_IN, account = true)
	@Operation(operationId = "changeAccount", summary = "Change the name you are credited by, or your legal name")
	AccountJson change(@Valid @RequestBody NamesBody body, Actor actor) {
		return json(actor, this.account.name(actor, body.creditName(), body.legalName()));
	}

	@GetMapping("/words")
	@Access(value = Who.SIGNED_IN, account = true)
	@Operation(operationId = "listOwnWords", summary = "The words that you wrote into the register, newest first")
	Page<WordsJson> words(Paging paging, Actor actor) {
		UUID before = paging.cursor(WORDS, 1).map((cursor) -> cursor.uuid(0)).orElse(null);
		List<ListOwnWords.Written> found = this.listOwnWords.list(actor, before, paging.oneMore());
		return Page.cut(found, paging, WordsJson::from, (last) -> Cursor.of(WORDS, last.id()));
	}

	@PostMapping("/erasure")
	@Access(value = Who.SIGNED_IN, account = true)
	@Unkeyed
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "eraseOwnAccount",
			summary = "Erase your account, your name and your words for good; the facts stay")
	void erase(@Valid @RequestBody ErasureBody body, Actor actor, HttpServletRequest http) {
		this.account.requirePassword(actor, body.presentPassword(), ClientNetwork.of(http), "#/presentPassword");
		this.eraseAccount.erase(actor.id(), actor.id());
		PersonSession.end(http);
	}

	private AccountJson json(Actor actor, OwnAccount.Kept kept) {
		return new AccountJson(kept.id(), kept.email(), kept.creditName(), kept.legalName(), kept.createdAt(),
				this.listRoles.of(actor, kept.id()).stream().map(HeldRoleJson::from).toList());
	}

	/**
	 * What is kept of a person themselves. Tokens, sign-ins and words have lists of their
	 * own.
	 *
	 * @param creditName shown to all
	 * @param legalName shown to nobody else; null where none was given
	 */
	record AccountJson(UUID id, String email, String creditName, @Nullable String legalName, Instant createdAt,
			List<HeldRoleJson> roles) {
	}

	/**
	 * Names to be changed; what is null stays as it is.
	 *
	 * @param legalName an empty one is taken away
	 */
	record NamesBody(@Nullable @Size(min = 1, max = 100) @Pattern(regexp = "\\S(.*\\S)?") String creditName,
			@Nullable @Size(max = 200) String legalName) {
	}

	/**
	 * Some words of one's own.
	 *
	 * @param kind of the change with which they were written
	 */
	record WordsJson(UUID id, String county, Instant at, String kind, String words) {

		static WordsJson from(ListOwnWords.Written written) {
			return new WordsJson(written.id(), written.county(), written.at(), written.kind(), written.words());
		}

	}

	/**
	 * Proof that it is meant.
	 */
	record ErasureBody(@NotBlank @Size(max = 1000) String presentPassword) {
	}

}
