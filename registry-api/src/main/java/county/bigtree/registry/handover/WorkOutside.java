package county.bigtree.registry.handover;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.desk.Due;
import county.bigtree.registry.desk.ListDue;
import county.bigtree.registry.naming.Names;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.visit.Visits;

import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * What is to be done at the trees: visits planned, and measurements that run out.
 */
@Component
@Order(2)
class WorkOutside implements OpenWork {

	private static final int MOST = 1000;

	private final Visits visits;

	private final ListDue due;

	private final Prose prose;

	WorkOutside(Visits visits, ListDue due, Prose prose) {
		this.visits = visits;
		this.due = due;
		this.prose = prose;
	}

	@Override
	public List<Section> of(Actor coordinator, String county) {
		List<Item> planned = this.visits.list(coordinator, county, false, true, new UUID(0, 0), MOST)
			.stream()
			.map((one) -> new Item(one.tag(), one.byWhen(), visit(one)))
			.toList();
		List<Due> trees = this.due.of(county, null);
		Names names = this.prose.names(trees.stream().map(Due::species).toList());
		List<Item> due = trees.stream().map((one) -> new Item(one.tag(), one.dueOn(), due(one, names))).toList();
		return List.of(new Section("Visits still to be made, and by when", planned, "None is planned."),
				new Section("To be measured again, and by when", due, "None is due."));
	}

	private String visit(Visits.Visit one) {
		return "%s, by %s%s%s".formatted(this.prose.say("visit.purpose." + one.purpose()), one.verifierName(),
				Prose.more(", with ", one.companion()), Prose.more(": ", one.notes()));
	}

	private String due(Due one, Names names) {
		return "%s, rank %d%s, measured on %s: %s".formatted(names.species(one.species()), one.rank(),
				Prose.more(", ", (one.title() != null) ? one.title().word() : null), this.prose.day(one.measuredOn()),
				this.prose.say("due.why." + one.why().word()));
	}

}
