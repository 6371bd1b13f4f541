package county.bigtree.registry.journal;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * The end of a county's chain as a change finds it.
 *
 * @param county the county
 * @param zone its time zone
 * @param seq the number of the last change
 * @param recordedAt when it was recorded
 * @param chain its hash
 * @param caughtUpAt the last instant at which time itself changed a title
 */
record CountyHead(String county, ZoneId zone, long seq, Instant recordedAt, byte[] chain, Instant caughtUpAt) {

	/**
	 * The first instant at or after the clock's at which a change may be recorded: after
	 * all that is recorded, and never exactly at the start of a day, which is where the
	 * effects of time are stamped.
	 */
	Instant next(Instant clock) {
		Instant least = later(this.recordedAt, this.caughtUpAt).plusNanos(1000);
		Instant at = later(clock, least);
		LocalDate day = LocalDate.ofInstant(at, this.zone);
		return at.equals(day.atStartOfDay(this.zone).toInstant()) ? at.plusNanos(1000) : at;
	}

	private static Instant later(Instant one, Instant other) {
		return one.isAfter(other) ? one : other;
	}

}
