package county.bigtree.registry.demo;

import java.util.UUID;

import county.bigtree.registry.edition.AnnounceEdition;
import county.bigtree.registry.edition.EditionBody;
import county.bigtree.registry.edition.PublishEdition;
import county.bigtree.registry.people.Actor;
import tools.jackson.databind.JsonNode;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

import static county.bigtree.registry.demo.DemoActions.WHATEVER_ITS_REVISION;
import static county.bigtree.registry.demo.DemoActions.text;

/**
 * Announces and publishes the editions of the story.
 */
@Component
@ConditionalOnProperty("registry.demo")
class DemoEditions implements DemoPart {

	private static final String EDITION = "edition";

	private final AnnounceEdition announcing;

	private final PublishEdition publishing;

	DemoEditions(AnnounceEdition announcing, PublishEdition publishing) {
		this.announcing = announcing;
		this.publishing = publishing;
	}

	@Override
	public boolean act(DemoStory story, JsonNode action, Actor actor) {
		switch (text(action, "do")) {
			case "announce-edition" -> story.remember(EDITION, text(action, "as"),
					this.announcing.announce(actor, text(action, "county"), story.body(action, EditionBody.class)));
			case "publish-edition" -> this.publishing.publish(actor, edition(story, action), WHATEVER_ITS_REVISION);
			case "note-erratum" -> {
				Erratum erratum = story.body(action, Erratum.class);
				this.publishing.note(actor, edition(story, action), erratum.tree(), erratum.text());
			}
			default -> {
				return false;
			}
		}
		return true;
	}

	private static UUID edition(DemoStory story, JsonNode action) {
		return story.recall(EDITION, text(action, EDITION));
	}

	private record Erratum(String tree, String text) {
	}

}
