package county.bigtree.registry.demo;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.standing.FoldSpecies;
import county.bigtree.registry.tree.AgreeOnLine;
import county.bigtree.registry.tree.CorrectTree;
import county.bigtree.registry.tree.MergeTrees;
import county.bigtree.registry.tree.PlaceBody;
import county.bigtree.registry.tree.RuleOnTree;
import county.bigtree.registry.tree.SplitBody;
import county.bigtree.registry.tree.SplitTree;
import county.bigtree.registry.tree.TellApart;
import county.bigtree.registry.tree.StemRulingBody;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

import static county.bigtree.registry.demo.DemoActions.WHATEVER_ITS_REVISION;
import static county.bigtree.registry.demo.DemoActions.reason;
import static county.bigtree.registry.demo.DemoActions.text;
import static county.bigtree.registry.demo.DemoActions.tree;

/**
 * Does the story's corrections of trees and species through the use cases that a request
 * would reach.
 */
@Component
@ConditionalOnProperty("registry.demo")
class DemoCorrections implements DemoPart {

	private final Trees trees;

	private final AgreeOnLine line;

	private final FoldSpecies folding;

	DemoCorrections(Trees trees, AgreeOnLine line, FoldSpecies folding) {
		this.trees = trees;
		this.line = line;
		this.folding = folding;
	}

	@Override
	public boolean act(DemoStory story, JsonNode action, Actor actor) {
		switch (text(action, "do")) {
			case "identify" -> identify(story, action, actor);
			case "locate" -> locate(story, action, actor);
			case "propose" -> propose(story, action, actor);
			case "answer-proposal" -> answer(story, action, actor);
			case "merge" -> merge(story, action, actor);
			case "tell-apart" -> this.trees.apart()
				.tell(actor, tree(story, action), story.recall("tree", text(action.path("body"), "from")).toString(),
						reason(action), WHATEVER_ITS_REVISION);
			case "revoke-merge" ->
				this.trees.merging().revoke(actor, tree(story, action), reason(action), WHATEVER_ITS_REVISION);
			case "split" -> split(story, action, actor);
			case "eligibility" -> this.trees.ruling()
				.eligible(actor, tree(story, action), action.path("body").path("eligible").booleanValue(),
						reason(action), WHATEVER_ITS_REVISION);
			case "rule-stems" -> stems(story, action, actor);
			case "fold" -> fold(action, actor);
			default -> {
				return false;
			}
		}
		return true;
	}

	private void identify(DemoStory story, JsonNode action, Actor actor) {
		JsonNode body = action.path("body");
		this.trees.correcting()
			.identify(actor, tree(story, action), text(body, "species"), text(body, "by"), reason(action),
					WHATEVER_ITS_REVISION);
	}

	private void locate(DemoStory story, JsonNode action, Actor actor) {
		Location body = story.body(action, Location.class);
		this.trees.correcting()
			.locate(actor, tree(story, action), body.location(), body.county(), body.reason(), WHATEVER_ITS_REVISION);
	}

	private void propose(DemoStory story, JsonNode action, Actor actor) {
		Proposal body = story.body(action, Proposal.class);
		UUID proposal = this.line.propose(actor, tree(story, action), body.location(), body.county(), body.reason(),
				WHATEVER_ITS_REVISION);
		story.remember("proposal", text(action, "as"), proposal);
	}

	private void answer(DemoStory story, JsonNode action, Actor actor) {
		this.line.answer(actor, story.recall("proposal", text(action, "proposal")),
				action.path("body").path("accept").booleanValue(), reason(action), WHATEVER_ITS_REVISION);
	}

	private void merge(DemoStory story, JsonNode action, Actor actor) {
		this.trees.merging()
			.merge(actor, tree(story, action), story.recall("tree", text(action.path("body"), "into")).toString(),
					reason(action), WHATEVER_ITS_REVISION);
	}

	private void split(DemoStory story, JsonNode action, Actor actor) {
		Split body = story.body(action, Split.class);
		UUID other = this.trees.splitting()
			.split(actor, tree(story, action),
					new SplitBody(body.measurements(story), body.location(), body.species(), body.reason()),
					WHATEVER_ITS_REVISION);
		story.remember("tree", text(action, "as"), other);
	}

	private void stems(DemoStory story, JsonNode action, Actor actor) {
		StemRulingBody body = story.body(action, StemRulingBody.class);
		List<UUID> keeps = action.path("keeps").isString() ? List.of(story.recall("measurement", text(action, "keeps")))
				: List.of();
		this.trees.ruling()
			.stems(actor, tree(story, action), new StemRulingBody(body.form(), body.unionHeightFeet(),
					body.scoredStem(), body.measureAt(), body.began(), keeps, body.reason()), WHATEVER_ITS_REVISION);
	}

	private void fold(JsonNode action, Actor actor) {
		JsonNode body = action.path("body");
		String refusal = this.folding.fold(actor.id(), text(action, "species"), text(body, "into"), reason(action));
		if (!refusal.isEmpty()) {
			throw new IllegalStateException(refusal);
		}
	}

	record Location(PlaceBody location, @Nullable String county, String reason) {
	}

	record Proposal(PlaceBody location, String county, String reason) {
	}

	record Split(List<String> measurements, PlaceBody location, @Nullable String species, String reason) {

		List<UUID> measurements(DemoStory story) {
			return this.measurements.stream().map((name) -> story.recall("measurement", name)).toList();
		}

	}

	/**
	 * What coordinators decide on trees.
	 */
	@Component
	@ConditionalOnProperty("registry.demo")
	record Trees(CorrectTree correcting, MergeTrees merging, TellApart apart, SplitTree splitting, RuleOnTree ruling) {
	}

}
