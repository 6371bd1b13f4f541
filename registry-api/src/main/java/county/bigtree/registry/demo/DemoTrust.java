package county.bigtree.registry.demo;

import java.util.UUID;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.erasure.EraseAbout;
import county.bigtree.registry.letter.DecideLetter;
import county.bigtree.registry.letter.Letter;
import county.bigtree.registry.letter.LetterBody;
import county.bigtree.registry.letter.LetterOutcomeBody;
import county.bigtree.registry.letter.Letters;
import county.bigtree.registry.nomination.NominationBook;
import county.bigtree.registry.owner.ConsentBody;
import county.bigtree.registry.owner.OwnerBody;
import county.bigtree.registry.owner.Owners;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.signoff.AssentToTitle;
import county.bigtree.registry.tree.CorrectTree;
import county.bigtree.registry.visit.OutcomeBody;
import county.bigtree.registry.visit.PlanBody;
import county.bigtree.registry.visit.PlanVisit;
import county.bigtree.registry.visit.TellOutcome;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

import static county.bigtree.registry.demo.DemoActions.WHATEVER_ITS_REVISION;
import static county.bigtree.registry.demo.DemoActions.reason;
import static county.bigtree.registry.demo.DemoActions.text;
import static county.bigtree.registry.demo.DemoActions.tree;

/**
 * Does what the story tells of owners, letters, visits and a coordinator's yes.
 */
@Component
@ConditionalOnProperty("registry.demo")
class DemoTrust implements DemoPart {

	private final Privacy privacy;

	private final Mail mail;

	private final Going going;

	private final AssentToTitle assenting;

	private final CorrectTree correcting;

	DemoTrust(Privacy privacy, Mail mail, Going going, AssentToTitle assenting, CorrectTree correcting) {
		this.privacy = privacy;
		this.mail = mail;
		this.going = going;
		this.assenting = assenting;
		this.correcting = correcting;
	}

	@Override
	public boolean act(DemoStory story, JsonNode action, Actor actor) {
		switch (text(action, "do")) {
			case "own" -> story.remember("owner", text(action, "as"),
					this.privacy.owners().add(actor, tree(story, action), story.body(action, OwnerBody.class)));
			case "consent" -> this.privacy.owners()
				.say(actor, story.recall("owner", text(action, "owner")), story.body(action, ConsentBody.class));
			case "end-owner" ->
				this.privacy.owners().end(actor, story.recall("owner", text(action, "owner")), reason(action));
			case "erase-words" -> erase(story, action, actor);
			case "letter" -> letter(story, action, actor);
			case "decide-letter" -> decide(story, action, actor);
			case "plan-visit" -> story.remember("visit", text(action, "as"),
					this.going.planning().plan(actor, story.body(action, PlanBody.class)));
			case "tell-visit" -> tell(story, action, actor);
			case "assent" -> this.assenting.assent(actor, story.recall("sign-off", text(action, "signOff")),
					reason(action), WHATEVER_ITS_REVISION);
			case "show" -> this.correcting.show(actor, tree(story, action),
					Disclosure.find(text(action.path("body"), "visibility")).orElseThrow(), reason(action),
					WHATEVER_ITS_REVISION);
			default -> {
				return false;
			}
		}
		return true;
	}

	/**
	 * About whom it is stands in the field of that name.
	 */
	private void erase(DemoStory story, JsonNode action, Actor actor) {
		EraseAbout.Whom whom = action.has("owner") ? EraseAbout.Whom.OWNER
				: action.has("letter") ? EraseAbout.Whom.LETTER_WRITER : EraseAbout.Whom.FINDER;
		String kind = switch (whom) {
			case OWNER -> "owner";
			case LETTER_WRITER -> "letter";
			case FINDER -> "nomination";
		};
		this.privacy.erasing().erase(actor, whom, story.recall(kind, text(action, kind)));
	}

	private void letter(DemoStory story, JsonNode action, Actor actor) {
		@Nullable Actor writer = action.path("actor").isString() ? actor : null;
		UUID id = this.mail.letters()
			.receive(writer, text(action, "county"), story.body(action, LetterBody.class))
			.id();
		story.remember("letter", text(action, "as"), id);
	}

	/**
	 * Whoever decides has opened the letter. What it became bears the letter's name.
	 */
	private void decide(DemoStory story, JsonNode action, Actor actor) {
		UUID id = story.recall("letter", text(action, "letter"));
		this.mail.deciding().decide(actor, id, story.body(action, LetterOutcomeBody.class));
		Letter letter = this.mail.letters().open(actor, id);
		if (letter.nomination() != null) {
			NominationBook.Nomination nomination = this.mail.book().get(letter.nomination());
			story.remember("nomination", text(action, "letter"), nomination.id());
			story.remember("tree", text(action, "letter"), nomination.tree());
			story.remember("measurement", text(action, "letter"), nomination.measurement());
		}
		if (letter.visit() != null) {
			story.remember("visit", text(action, "letter"), letter.visit());
		}
		if (letter.conditionReport() != null) {
			story.remember("report", text(action, "letter"), letter.conditionReport());
		}
	}

	/**
	 * A report that comes of the visit bears its name.
	 */
	private void tell(DemoStory story, JsonNode action, Actor actor) {
		String name = text(action, "visit");
		UUID report = this.going.telling()
			.tell(actor, story.recall("visit", name), story.body(action, OutcomeBody.class), WHATEVER_ITS_REVISION)
			.conditionReport();
		if (report != null) {
			story.remember("report", name, report);
		}
	}

	/**
	 * What is private of trees.
	 */
	@Component
	@ConditionalOnProperty("registry.demo")
	record Privacy(Owners owners, EraseAbout erasing) {
	}

	/**
	 * What comes in by letter.
	 */
	@Component
	@ConditionalOnProperty("registry.demo")
	record Mail(Letters letters, DecideLetter deciding, NominationBook book) {
	}

	/**
	 * Visits.
	 */
	@Component
	@ConditionalOnProperty("registry.demo")
	record Going(PlanVisit planning, TellOutcome telling) {
	}

}
