package county.bigtree.registry.round.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.time.Instant;
import java.time.temporal.Temporal;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

import county.bigtree.registry.desk.Due;
import county.bigtree.registry.visit.Visits;
import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.ComponentList;
import net.fortuna.ical4j.model.component.CalendarComponent;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.ProdId;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.Url;
import net.fortuna.ical4j.model.property.immutable.ImmutableTransp;
import net.fortuna.ical4j.model.property.immutable.ImmutableVersion;
import org.jspecify.annotations.Nullable;

/**
 * Days for a calendar, as RFC 5545 writes them: each a whole day, or the minute that was
 * arranged. Calendars are kept by others, so that no place, name or note of a person
 * stands in them: those are behind the link.
 *
 * @param at when they were so
 */
record DaysInCalendar(StopWords words, Instant at, UnaryOperator<String> address) {

	private static final String PRODUCT = "-//County big-tree registry//EN";

	static String type() {
		return "text/calendar;charset=utf-8";
	}

	/** The days by which trees are to be measured again. */
	byte[] due(List<Due> due) {
		return write(due.stream().map(this::event));
	}

	/** The days on which visits are to be made, if any was named. */
	byte[] visits(List<Visits.Visit> visits) {
		return write(visits.stream().flatMap((visit) -> day(visit).map((day) -> event(visit, day))));
	}

	private static Stream<Temporal> day(Visits.Visit visit) {
		return Stream.<@Nullable Temporal>of(visit.arrangedAt(), visit.arrangedOn(), visit.byWhen())
			.flatMap(Stream::ofNullable)
			.limit(1);
	}

	private VEvent event(Due due) {
		return event("due-" + due.tree(), due.dueOn(),
				this.words.say("round.calendar.due", due.tag(), this.words.name(due.species())), this.words.task(due),
				"/t/" + due.tag());
	}

	private VEvent event(Visits.Visit visit, Temporal day) {
		return event("visit-" + visit.id(), day,
				this.words.say("round.calendar.visit", visit.tag(), this.words.name(visit.species())),
				this.words.task(visit), "/visits/" + visit.id());
	}

	private VEvent event(String id, Temporal day, String summary, String description, String path) {
		VEvent event = new VEvent(false);
		event.add(new Uid(id + "@bigtree-registry"));
		event.add(new DtStamp(this.at));
		event.add(new DtStart<>(day));
		event.add(new Summary(summary));
		event.add(new Description(description));
		event.add(new Url(URI.create(this.address.apply(path))));
		event.add(ImmutableTransp.TRANSPARENT);
		return event;
	}

	private static byte[] write(Stream<VEvent> events) {
		Calendar calendar = new Calendar(
				new ComponentList<CalendarComponent>(events.map((event) -> (CalendarComponent) event).toList()));
		calendar.add(new ProdId(PRODUCT));
		calendar.add(ImmutableVersion.VERSION_2_0);
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try {
			// A calendar without a day is one too, though not by the letter of the
			// grammar.
			new CalendarOutputter(false).output(calendar, bytes);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return bytes.toByteArray();
	}

}
