package county.bigtree.registry.upkeep;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import county.bigtree.registry.notice.ServiceLines;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * How the register was kept, in the words of a mail.
 */
@Component
class WeekInLines implements ServiceLines {

	private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm 'UTC'", Locale.US)
		.withZone(ZoneOffset.UTC);

	private final Troubles troubles;

	private final UpkeepRuns runs;

	private final MessageSource messages;

	WeekInLines(Troubles troubles, UpkeepRuns runs, MessageSource messages) {
		this.troubles = troubles;
		this.runs = runs;
		this.messages = messages;
	}

	@Override
	public List<String> ofTheWeek() {
		List<String> lines = new ArrayList<>();
		this.troubles.open()
			.forEach((trouble) -> lines.add(
					say("notice.upkeep-week.trouble", say("upkeep.trouble." + trouble.kind()), when(trouble.since()))));
		for (String kind : List.of(UpkeepRun.ARCHIVE, UpkeepRun.VERIFY, UpkeepRun.TRIAL)) {
			lines.add(this.runs.lastWell(kind)
				.map((run) -> say("notice.upkeep-week." + kind, when(run.endedAt())))
				.orElseGet(() -> say("notice.upkeep-week." + kind + ".never")));
		}
		return lines;
	}

	private static String when(@Nullable Instant instant) {
		return (instant != null) ? WHEN.format(instant) : "";
	}

	private String say(String key, Object... values) {
		return this.messages.getMessage(key, values, Locale.ENGLISH);
	}

}
