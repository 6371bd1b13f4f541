package county.bigtree.registry.round.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

import county.bigtree.registry.desk.Due;
import county.bigtree.registry.round.ReadRound;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.visit.Assignments;
import county.bigtree.registry.visit.Visits;

import org.springframework.context.MessageSource;

/**
 * What a round says in words, for devices that show a line or two.
 */
record StopWords(MessageSource messages, Map<String, Species> species) {

	/** What there is to do at a tree, and by when. */
	String toDo(ReadRound.Tree tree) {
		return say("round.todo", name(tree.species()),
				String.join("; ",
						Stream
							.of(tree.visits().stream().map(this::task), tree.filings().stream().map(this::task),
									tree.due().stream().map(this::task))
							.flatMap((tasks) -> tasks)
							.toList()));
	}

	/** How to find it, and whether one may. */
	String onTheWay(ReadRound.Stop stop) {
		List<String> words = new ArrayList<>();
		if (stop.place().locality() != null) {
			words.add(stop.place().locality());
		}
		if (stop.place().access() != null) {
			words.add(say("visit.access." + stop.place().access()));
		}
		stop.tree().visits().stream().flatMap((visit) -> Stream.ofNullable(visit.notes())).forEach(words::add);
		words.add(say("round.accuracy", stop.place().accuracyMetres().stripTrailingZeros().toPlainString()));
		return String.join(". ", words);
	}

	String name(String key) {
		Species known = this.species.get(key);
		return (known != null) ? known.commonName() : key;
	}

	String task(Visits.Visit visit) {
		String purpose = say("visit.purpose." + visit.purpose());
		return (visit.byWhen() != null) ? say("round.by", purpose, visit.byWhen().toString()) : purpose;
	}

	private String task(Assignments.Assignment filing) {
		return say("round.filing", filing.measuredOn().toString());
	}

	String task(Due due) {
		return say("round.due." + due.why().word(), due.dueOn().toString());
	}

	String say(String key, Object... arguments) {
		return this.messages.getMessage(key, arguments, Locale.ENGLISH);
	}

}
