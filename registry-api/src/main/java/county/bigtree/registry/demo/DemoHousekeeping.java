package county.bigtree.registry.demo;

import county.bigtree.registry.county.ChangeCounty;
import county.bigtree.registry.county.CountyChangeBody;
import county.bigtree.registry.county.EmptyCounty;
import county.bigtree.registry.nomination.DailyAnswers;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.CloseAccount;
import county.bigtree.registry.people.EraseAccount;
import county.bigtree.registry.species.AddSpecies;
import county.bigtree.registry.species.AddedSpeciesBody;
import county.bigtree.registry.transfer.WithdrawImport;
import tools.jackson.databind.JsonNode;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

import static county.bigtree.registry.demo.DemoActions.WHATEVER_ITS_REVISION;
import static county.bigtree.registry.demo.DemoActions.reason;
import static county.bigtree.registry.demo.DemoActions.text;

/**
 * Does what the story tells of counties, the catalogue and people who leave, and what the
 * register does by itself once a day.
 */
@Component
@ConditionalOnProperty("registry.demo")
class DemoHousekeeping implements DemoPart {

	private final Counties counties;

	private final Leaving leaving;

	private final AddSpecies adding;

	private final WithdrawImport withdrawing;

	private final DailyAnswers answers;

	DemoHousekeeping(Counties counties, Leaving leaving, AddSpecies adding, WithdrawImport withdrawing,
			DailyAnswers answers) {
		this.counties = counties;
		this.leaving = leaving;
		this.adding = adding;
		this.withdrawing = withdrawing;
		this.answers = answers;
	}

	@Override
	public boolean act(DemoStory story, JsonNode action, Actor actor) {
		switch (text(action, "do")) {
			case "change-county" -> this.counties.changing()
				.change(actor, text(action, "county"), story.body(action, CountyChangeBody.class),
						WHATEVER_ITS_REVISION);
			case "empty" -> this.counties.emptying().empty(actor, text(action, "county"), reason(action));
			case "add-species" -> this.adding.add(actor, story.body(action, AddedSpeciesBody.class));
			case "withdraw-import" -> this.withdrawing.withdraw(actor, story.recall("import", text(action, "import")),
					reason(action), true, WHATEVER_ITS_REVISION);
			case "close-account" -> this.leaving.closing().close(actor, story.person(text(action, "person")));
			case "erase-account" -> this.leaving.erasing().erase(actor.id(), actor.id());
			case "day-passes" -> this.answers.run();
			default -> {
				return false;
			}
		}
		return true;
	}

	/**
	 * What coordinators do with a county as such.
	 */
	@Component
	@ConditionalOnProperty("registry.demo")
	record Counties(ChangeCounty changing, EmptyCounty emptying) {
	}

	/**
	 * How people leave.
	 */
	@Component
	@ConditionalOnProperty("registry.demo")
	record Leaving(CloseAccount closing, EraseAccount erasing) {
	}

}
