package county.bigtree.registry.round.web;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.Temporal;
import java.util.Date;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.DateStart;
import biweekly.util.DateTimeComponents;
import biweekly.util.ICalDate;
import county.bigtree.registry.desk.Due;
import county.bigtree.registry.visit.Visits;
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
		VEvent event = new VEvent();
		event.setUid(id + "@bigtree-registry");
		event.setDateTimeStamp(Date.from(this.at));
		event.setDateStart(new DateStart(date(day)));
		event.setSummary(summary);
		event.setDescription(description);
		event.setUrl(this.address.apply(path));
		event.setTransparency(true);
		return event;
	}

	/** A day has no time and no zone: it is that day wherever one is. */
	private static ICalDate date(Temporal day) {
		return (day instanceof LocalDate date)
				? new ICalDate(new DateTimeComponents(date.getYear(), date.getMonthValue(), date.getDayOfMonth()),
						false)
				: new ICalDate(Date.from(Instant.from(day)), true);
	}

	private static byte[] write(Stream<VEvent> events) {
		ICalendar calendar = new ICalendar();
		calendar.setProductId(PRODUCT);
		events.forEach(calendar::addEvent);
		return Biweekly.write(calendar).go().getBytes(StandardCharsets.UTF_8);
	}

}
