package county.bigtree.registry.handover;

import java.time.ZoneId;
import java.util.List;
import java.util.Objects;

import county.bigtree.registry.desk.ListQueue;
import county.bigtree.registry.desk.Waiting;
import county.bigtree.registry.naming.Names;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.tree.AgreeOnLine;

import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * What waits for a decision; letters are told apart.
 */
@Component
@Order(1)
class OpenDecisions implements OpenWork {

	private final ListQueue queue;

	private final AgreeOnLine line;

	private final RulesReader rules;

	private final Prose prose;

	OpenDecisions(ListQueue queue, AgreeOnLine line, RulesReader rules, Prose prose) {
		this.queue = queue;
		this.line = line;
		this.rules = rules;
		this.prose = prose;
	}

	@Override
	public List<Section> of(Actor coordinator, String county) {
		ZoneId zone = this.rules.get(county).zone();
		List<Waiting> open = this.queue.of(county).stream().filter((one) -> !one.kind().equals("letter")).toList();
		Names names = this.prose
			.names(open.stream().map(Waiting::species).filter(Objects::nonNull).map(String::valueOf).toList());
		List<Item> waiting = open.stream()
			.map((one) -> new Item(one.tag(), one.since().atZone(zone).toLocalDate(), text(one, names)))
			.toList();
		List<Item> proposals = this.line.waiting(county).stream().map((one) -> proposal(one, names)).toList();
		return List.of(new Section("Waiting for a decision, and since when", waiting, "Nothing waits."),
				new Section("Proposals over the county's line", proposals, "None."));
	}

	private String text(Waiting one, Names names) {
		StringBuilder text = new StringBuilder(this.prose.say("queue.kind." + one.kind())).append(", ")
			.append(this.prose.say(status(one.kind()) + one.status()))
			.append(": ")
			.append(names.species(one.species()));
		if (one.points() != null) {
			text.append(", ").append(one.points().stripTrailingZeros().toPlainString()).append(" points");
		}
		if (one.wouldHold() != null) {
			text.append(", would be ").append(one.wouldHold().word());
		}
		if (one.title() != null) {
			text.append(", is ").append(one.title().word());
		}
		return text.append(one.extraordinary() ? ", extraordinary" : "").toString();
	}

	/** Where the words for the status of such a thing stand. */
	private static String status(String kind) {
		return switch (kind) {
			case "nomination" -> "desk.nomination.status.";
			case "measurement" -> "desk.measurement.status.";
			case "sign-off" -> "verdict.";
			case "relocation" -> "relocation.status.";
			case "photo" -> "photo.shows.";
			default -> "condition.";
		};
	}

	private static Item proposal(AgreeOnLine.Proposal one, Names names) {
		return new Item(one.tag(), null,
				"from %s to %s, to be answered by %s%s".formatted(names.county(one.fromCounty()),
						names.county(one.toCounty()), names.county(one.toBeAnsweredBy()),
						Prose.more(": ", one.reason())));
	}

}
