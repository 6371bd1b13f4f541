package county.bigtree.registry.demo;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.photo.AddPhoto;
import county.bigtree.registry.photo.DecidePhoto;
import county.bigtree.registry.photo.Decision;
import county.bigtree.registry.photo.ErasePhotos;
import county.bigtree.registry.photo.PhotoBody;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

import static county.bigtree.registry.demo.DemoActions.WHATEVER_ITS_REVISION;
import static county.bigtree.registry.demo.DemoActions.text;
import static county.bigtree.registry.demo.DemoActions.tree;

/**
 * Sends the story's photos and decides on them through the use cases that a request would
 * reach.
 */
@Component
@ConditionalOnProperty("registry.demo")
class DemoPhotos implements DemoPart {

	private final AddPhoto adding;

	private final DecidePhoto deciding;

	private final ErasePhotos erasing;

	DemoPhotos(AddPhoto adding, DecidePhoto deciding, ErasePhotos erasing) {
		this.adding = adding;
		this.deciding = deciding;
		this.erasing = erasing;
	}

	@Override
	public boolean act(DemoStory story, JsonNode action, Actor actor) {
		switch (text(action, "do")) {
			case "photo" -> add(story, action, actor);
			case "decide-photo" -> decide(story, action, actor);
			case "erase-photo" -> this.erasing.erase(actor, story.recall("photo", text(action, "photo")));
			default -> {
				return false;
			}
		}
		return true;
	}

	private void add(DemoStory story, JsonNode action, Actor actor) {
		story.remember("photo", text(action, "as"), this.adding.ofTree(actor, tree(story, action),
				story.body(action, PhotoBody.class), DemoPictures.jpeg(text(action, "picture"))));
	}

	private void decide(DemoStory story, JsonNode action, Actor actor) {
		JsonNode body = action.path("body");
		this.deciding.decide(actor, story.recall("photo", text(action, "photo")),
				Decision.find(text(body, "decision")).orElseThrow(), optional(body, "text"), optional(body, "reason"),
				WHATEVER_ITS_REVISION);
	}

	private static @Nullable String optional(JsonNode body, String field) {
		return body.path(field).isString() ? text(body, field) : null;
	}

}
