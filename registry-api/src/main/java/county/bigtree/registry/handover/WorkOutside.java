package county.bigtree.registry.handover;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.desk.Due;
import county.bigtree.registry.desk.ListDue;
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

	WorkOutside(Visits visits, ListDue due) {
		this.visits = visits;
		this.due = due;
	}

	@Override
	public List<Section> of(Actor coordinator, String county) {
		List<Item> planned = this.visits.list(coordinator, county, false, true, new UUID(0, 0), MOST)
			.stream()
			.map((one) -> new Item(one.tag(), one.byWhen(), visit(one)))
			.toList();
		List<Item> due = this.due.of(county, null)
			.stream()
			.map((one) -> new Item(one.tag(), one.dueOn(), due(one)))
			.toList();
		return List.of(new Section("Visits still to be made, and by when", planned, "None is planned."),
				new Section("To be measured again, and by when", due, "None is due."));
	}

	private static String visit(Visits.Visit one) {
		return "%s, by %s%s%s".formatted(one.purpose().replace('-', ' '), one.verifierName(),
				(one.companion() != null) ? ", with " + one.companion() : "",
				(one.notes() != null) ? ": " + one.notes() : "");
	}

	private static String due(Due one) {
		return "%s, rank %d%s, measured on %s: %s".formatted(one.species(), one.rank(),
				(one.title() != null) ? ", " + one.title().word() : "", one.measuredOn(),
				one.why().word().replace('-', ' '));
	}

}
