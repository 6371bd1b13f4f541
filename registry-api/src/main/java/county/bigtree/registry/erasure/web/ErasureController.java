package county.bigtree.registry.erasure.web;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.erasure.EraseAbout;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Erasing words about people.
 */
@RestController
@Tag(name = "Erasure", description = "Erasing what is kept in words about people who ask for it.")
class ErasureController {

	private final EraseAbout erasing;

	ErasureController(EraseAbout erasing) {
		this.erasing = erasing;
	}

	@PostMapping("/api/v1/owners/{id}/erasure")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "eraseOwner", summary = "Erase an owner's name, contact and words for good; consents stay")
	ErasedJson owner(@PathVariable UUID id, Actor actor) {
		return new ErasedJson(this.erasing.erase(actor, EraseAbout.Whom.OWNER, id));
	}

	@PostMapping("/api/v1/letters/{id}/erasure")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "eraseLetter", summary = "Erase a letter, its writer's contact and the answer for good")
	ErasedJson letter(@PathVariable UUID id, Actor actor) {
		return new ErasedJson(this.erasing.erase(actor, EraseAbout.Whom.LETTER_WRITER, id));
	}

	@PostMapping("/api/v1/nominations/{id}/filed-for/erasure")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "eraseFiledFor",
			summary = "Erase name, contact and credit of somebody for whom a nomination was filed, for good")
	ErasedJson finder(@PathVariable UUID id, Actor actor) {
		return new ErasedJson(this.erasing.erase(actor, EraseAbout.Whom.FINDER, id));
	}

	/**
	 * How many pieces of words were erased.
	 */
	record ErasedJson(int pieces) {
	}

}
