package county.bigtree.registry.photo.web;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.photo.DecidePhoto;
import county.bigtree.registry.photo.Decision;
import county.bigtree.registry.photo.ErasePhotos;
import county.bigtree.registry.photo.ShowPhotos;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * What is decided on photos, and their erasure.
 */
@RestController
@Tag(name = "Photos", description = "Photos of trees, private until somebody of the county passes them.")
class PhotoDecisionController {

	private final DecidePhoto deciding;

	private final ErasePhotos erasing;

	private final ShowPhotos showing;

	PhotoDecisionController(DecidePhoto deciding, ErasePhotos erasing, ShowPhotos showing) {
		this.deciding = deciding;
		this.erasing = erasing;
		this.showing = showing;
	}

	@PostMapping("/api/v1/photos/{id}/decisions")
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "decidePhoto",
			summary = "Pass a photo, refuse it or take its pass back, as a verifier; or withdraw it, if you sent it")
	PhotoJson decide(@PathVariable UUID id, @RequestBody @Valid PhotoDecisionBody body, IfMatch ifMatch, Actor actor) {
		Decision decision = Decision.find(body.decision())
			.orElseThrow(() -> Problem.invalid("#/decision", "unknown", "must be pass, refuse, take-back or withdraw"));
		this.deciding.decide(actor, id, decision, body.text(), body.reason(),
				(revision) -> ifMatch.require(revision, () -> PhotoJson.from(this.showing.get(id, actor))));
		return PhotoJson.from(this.showing.get(id, actor));
	}

	@PostMapping("/api/v1/photos/{id}/erasure")
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "erasePhoto",
			summary = "Erase a photo and what was said of it for good: one's own, or as a coordinator for whom it concerns")
	void erase(@PathVariable UUID id, Actor actor) {
		this.erasing.erase(actor, id);
	}

	/**
	 * A decision on a photo.
	 *
	 * @param decision pass, refuse, take-back or withdraw
	 * @param text with pass: what there is to see, for those who can't see it, in place
	 * of what was said before; needed where nothing was
	 * @param reason for who sent it; needed to refuse and to take back
	 */
	record PhotoDecisionBody(@NotNull String decision, @Nullable String text, @Nullable String reason) {
	}

}
