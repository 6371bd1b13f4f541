package county.bigtree.registry.edition;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;
import org.jspecify.annotations.Nullable;

/**
 * A county's published list, from its announcement on.
 *
 * @param filingsBy the last day by which filings are in time, in the time zone
 * @param graceDays for filings that come late out of the woods
 * @param closesOn the day of the list
 * @param timeZone the county's when the edition was announced
 * @param publication null until it is published
 * @param errata how many have been noted
 */
public record Edition(UUID id, String county, String name, LocalDate filingsBy, int graceDays, LocalDate closesOn,
		String timeZone, Instant announcedAt, @Nullable Publication publication, int errata,
		@JsonIgnore long revision) implements Revisioned {

	/**
	 * Whether a filing is in time: it arrived by the deadline, or within the days of
	 * grace if its figures were taken by then.
	 */
	boolean isInTime(Instant arrived, LocalDate takenOn) {
		Instant deadline = startOf(this.filingsBy.plusDays(1));
		Instant graceEnds = startOf(this.filingsBy.plusDays(this.graceDays).plusDays(1));
		return arrived.isBefore(deadline) || arrived.isBefore(graceEnds) && !takenOn.isAfter(this.filingsBy);
	}

	/** The first instant after the day of the list: before it nothing is published. */
	Instant closed() {
		return startOf(this.closesOn.plusDays(1));
	}

	private Instant startOf(LocalDate day) {
		return day.atStartOfDay(ZoneId.of(this.timeZone)).toInstant();
	}

	/**
	 * That it was published.
	 *
	 * @param knownAt what was known then stands in the list
	 * @param headSeq the number of the last change of the county's journal that it knows
	 * @param headHash the hash of the journal's chain there, as it is printed in the list
	 * @param listSha256 of the list as JSON
	 * @param csvSha256 of the list as CSV
	 * @param pdfSha256 of the list as PDF
	 */
	public record Publication(Instant publishedAt, Instant knownAt, long headSeq, String headHash, String listSha256,
			String csvSha256, @Nullable String pdfSha256) {
	}

}
