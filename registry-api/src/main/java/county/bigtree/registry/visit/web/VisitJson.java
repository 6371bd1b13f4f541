package county.bigtree.registry.visit.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.visit.Visits;
import org.jspecify.annotations.Nullable;

/**
 * A visit as answers hold it.
 *
 * @param species what the tree is identified as
 * @param county where the tree stands now
 * @param guest whether its verifier is none of the county's, and may act as one at this
 * tree while it is open
 * @param open whether it is still to be made
 * @param outcome what came of it, or null before that is told
 */
record VisitJson(UUID id, UUID tree, String tag, String species, String county, String purpose, UUID verifier,
		boolean guest, String verifierName, @Nullable String companion, @Nullable LocalDate byWhen,
		@Nullable LocalDate arrangedOn, @Nullable Instant arrangedAt, UUID plannedBy, Instant recordedAt,
		@Nullable String notes, boolean open, @Nullable OutcomeJson outcome,
		@JsonIgnore long revision) implements Revisioned {

	static VisitJson from(Visits.Visit visit) {
		return new VisitJson(visit.id(), visit.tree(), visit.tag(), visit.species(), visit.county(), visit.purpose(),
				visit.verifier(), visit.guest(), visit.verifierName(), visit.companion(), visit.byWhen(),
				visit.arrangedOn(), visit.arrangedAt(), visit.plannedBy(), visit.recordedAt(), visit.notes(),
				visit.open(), OutcomeJson.from(visit), visit.revision());
	}

	/**
	 * What came of a visit.
	 *
	 * @param by who told it
	 */
	record OutcomeJson(String outcome, LocalDate visitedOn, @Nullable String remarks, @Nullable UUID measurement,
			@Nullable UUID conditionReport, UUID by, Instant recordedAt) {

		static @Nullable OutcomeJson from(Visits.Visit visit) {
			return (visit.outcome() == null) ? null
					: new OutcomeJson(visit.outcome(), Objects.requireNonNull(visit.visitedOn()), visit.remarks(),
							visit.measurement(), visit.conditionReport(), Objects.requireNonNull(visit.toldBy()),
							Objects.requireNonNull(visit.toldAt()));
		}

	}

}
