package county.bigtree.registry.handover;

import java.time.ZoneId;
import java.util.List;

import county.bigtree.registry.desk.ListQueue;
import county.bigtree.registry.desk.Waiting;
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

	OpenDecisions(ListQueue queue, AgreeOnLine line, RulesReader rules) {
		this.queue = queue;
		this.line = line;
		this.rules = rules;
	}

	@Override
	public List<Section> of(Actor coordinator, String county) {
		ZoneId zone = this.rules.get(county).zone();
		List<Item> waiting = this.queue.of(county)
			.stream()
			.filter((one) -> !one.kind().equals("letter"))
			.map((one) -> new Item(one.tag(), one.since().atZone(zone).toLocalDate(), text(one)))
			.toList();
		List<Item> proposals = this.line.waiting(county).stream().map(OpenDecisions::proposal).toList();
		return List.of(new Section("Waiting for a decision, and since when", waiting, "Nothing waits."),
				new Section("Proposals over the county's line", proposals, "None."));
	}

	private static String text(Waiting one) {
		StringBuilder text = new StringBuilder(one.kind().replace('-', ' ')).append(", ")
			.append(one.status().replace('-', ' '))
			.append(": ")
			.append(one.species());
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

	private static Item proposal(AgreeOnLine.Proposal one) {
		return new Item(one.tag(), null, "from %s to %s, to be answered by %s%s".formatted(one.fromCounty(),
				one.toCounty(), one.toBeAnsweredBy(), (one.reason() != null) ? ": " + one.reason() : ""));
	}

}
