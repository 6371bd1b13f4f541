package county.bigtree.registry.filing.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.filing.ListFilings;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * One's own filings.
 */
@RestController
@Tag(name = "Filings", description = "What one filed oneself, and what became of it.")
class FilingsController {

	private static final String FILINGS = "filings";

	private final ListFilings filings;

	FilingsController(ListFilings filings) {
		this.filings = filings;
	}

	@GetMapping("/api/v1/people/me/filings")
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "listFilings",
			summary = "Your nominations, remeasurements and condition reports, newest first, each as it stands now")
	Page<FilingJson> list(Paging paging, Actor actor) {
		UUID before = paging.cursor(FILINGS, 1).map((cursor) -> cursor.uuid(0)).orElse(null);
		return Page.cut(this.filings.list(actor, before, paging.oneMore()), paging, FilingJson::from,
				(last) -> Cursor.of(FILINGS, last.change()));
	}

	/**
	 * Something that one filed.
	 *
	 * @param kind nomination, remeasurement or report
	 * @param tree the one that is kept, where it was merged since
	 * @param status that of a nomination, of a measurement, or of a report: waiting,
	 * accepted or declined
	 * @param on the day measured or observed, or the month or year as which it is known
	 * @param points that the measurement comes to; null where it lacks a figure
	 * @param condition reported
	 * @param reason why a nomination was returned or declined
	 * @param lapsesOn when a returned nomination lapses unless it is answered, once that
	 * is near
	 */
	record FilingJson(String kind, UUID id, UUID tree, String tag, String county, String species, String status,
			KnownDay on, Instant recordedAt, @Nullable BigDecimal points, @Nullable String condition,
			@Nullable String reason, @Nullable LocalDate lapsesOn) {

		static FilingJson from(ListFilings.Filing of) {
			return new FilingJson(of.kind(), of.id(), of.tree(), of.tag(), of.county(), of.species(), of.status(),
					of.on(), of.recordedAt(), of.points(), of.condition(), of.reason(), of.lapsesOn());
		}

	}

}
