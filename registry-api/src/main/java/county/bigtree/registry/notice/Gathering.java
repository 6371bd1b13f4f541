package county.bigtree.registry.notice;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.desk.Due;
import county.bigtree.registry.desk.ListDue;
import county.bigtree.registry.journal.SqlTime;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Finds what a notice of several things has to tell, at the time it is sent.
 */
@Component
class Gathering {

	/** What is more is counted. */
	static final int LINES = 20;

	/** How long before a measurement is too old its tree counts as due. */
	static final int DAYS_AHEAD = 30;

	private static final String TURNED = """
			select t.tag, coalesce(p.common_name, p.scientific_name) as species, s.title, s.to_at is null or s.to_at >= :to as began
			from title_span s join tree t on t.id = s.tree join species p on p.key = s.species
			where s.county = :county and (s.from_at >= :from and s.from_at < :to or s.to_at >= :from and s.to_at < :to
			  and not exists (select from title_span b where b.tree = s.tree and b.from_at = s.to_at))
			order by p.common_name, coalesce(s.to_at, s.from_at), t.tag""";

	/** Figures of a week, each the end of a message key. */
	private static final Map<String, String> WEEK = week();

	private final JdbcClient jdbc;

	private final ListDue listDue;

	private final NoticeWords words;

	private final List<ServiceLines> service;

	Gathering(JdbcClient jdbc, ListDue listDue, NoticeWords words, List<ServiceLines> service) {
		this.service = service;
		this.jdbc = jdbc;
		this.listDue = listDue;
		this.words = words;
	}

	List<String> lines(Notice notice) {
		return switch (notice.kind()) {
			case TITLES_TURNED -> cut(turned(notice));
			case REMEASUREMENT_DUE -> cut(due(notice.inCounty(), notice.recipient()));
			case WEEKLY_DIGEST -> week(notice);
			case UPKEEP_WEEK -> this.service.stream().flatMap((lines) -> lines.ofTheWeek().stream()).toList();
			case UPKEEP_TROUBLE, FILING_RECEIVED, FILING_RETURNED, FILING_DECIDED, TITLE_WON, TITLE_LOST,
					WORK_ASSIGNED ->
				List.of();
		};
	}

	/**
	 * Those who last measured a tree that is due soon.
	 */
	Set<UUID> measurersOfDue(String county) {
		Set<UUID> measurers = new HashSet<>();
		soon(county).forEach((due) -> measurers.add(lastMeasurer(due.tree())));
		return measurers;
	}

	private List<String> turned(Notice notice) {
		LocalDate day = LocalDate.parse(notice.detail());
		return between(TURNED, notice.inCounty(), day, day.plusDays(1)).query((row, number) -> this.words.say(
				"notice.titles-turned." + (row.getBoolean("began") ? "began" : "ended"), row.getString("tag"),
				row.getString("species"), this.words.say("title." + row.getString("title"))))
			.list();
	}

	private List<String> due(String county, UUID person) {
		return soon(county).stream()
			.filter((due) -> person.equals(lastMeasurer(due.tree())))
			.map((due) -> this.words.say("notice.remeasurement-due." + due.why().word(), due.tag(),
					due.dueOn().toString()))
			.toList();
	}

	private List<Due> soon(String county) {
		return this.listDue.of(county, LocalDate.now(zone(county)).plusDays(DAYS_AHEAD));
	}

	private UUID lastMeasurer(UUID tree) {
		return this.jdbc
			.sql("select filed_by from measurement where tree = ? order by measured_on desc, recorded_at desc limit 1")
			.param(tree)
			.query(UUID.class)
			.single();
	}

	private List<String> week(Notice notice) {
		LocalDate monday = LocalDate.parse(notice.detail());
		List<String> lines = new ArrayList<>();
		WEEK.forEach((figure, query) -> {
			long count = between(query, notice.inCounty(), monday.minusWeeks(1), monday).query(Long.class).single();
			if (count > 0) {
				lines.add(this.words.say("notice.weekly-digest." + figure, count));
			}
		});
		int due = soon(notice.inCounty()).size();
		if (due > 0) {
			lines.add(this.words.say("notice.weekly-digest.due", due));
		}
		return lines.isEmpty() ? List.of(this.words.say("notice.weekly-digest.quiet")) : lines;
	}

	private JdbcClient.StatementSpec between(String query, String county, LocalDate from, LocalDate to) {
		ZoneId zone = zone(county);
		Instant first = from.atStartOfDay(zone).toInstant();
		return this.jdbc.sql(query)
			.param("county", county)
			.param("from", SqlTime.of(first))
			.param("to", SqlTime.of(to.atStartOfDay(zone).toInstant()));
	}

	private ZoneId zone(String county) {
		return ZoneId
			.of(this.jdbc.sql("select time_zone from county where key = ?").param(county).query(String.class).single());
	}

	private List<String> cut(List<String> lines) {
		if (lines.size() <= LINES) {
			return lines;
		}
		List<String> shown = new ArrayList<>(lines.subList(0, LINES));
		shown.add(this.words.say("notice.more", lines.size() - LINES));
		return shown;
	}

	private static Map<String, String> week() {
		String within = "county = :county and recorded_at >= :from and recorded_at < :to";
		Map<String, String> week = new LinkedHashMap<>();
		week.put("nominated", "select count(*) from nomination where " + within);
		week.put("remeasured", "select count(*) from measurement m where " + within
				+ " and basis = 'filed' and not exists (select from nomination where measurement = m.id)");
		week.put("reported", "select count(*) from condition_report where " + within);
		week.put("accepted", "select count(*) from nomination_move where " + within + " and to_status = 'accepted'");
		week.put("declined", "select count(*) from nomination_move where " + within + " and to_status = 'declined'");
		week.put("carried-over", "select count(*) from measurement where " + within + " and basis = 'carried-over'");
		week.put("won",
				"select count(*) from title_span where county = :county and from_at >= :from and from_at < :to");
		week.put("lost", "select count(*) from title_span where county = :county and to_at >= :from and to_at < :to");
		week.put("waiting",
				"select count(*) from nomination where county = :county and status in ('submitted', 'under-review')");
		week.put("returned", "select count(*) from nomination where county = :county and status = 'returned'");
		return week;
	}

}
