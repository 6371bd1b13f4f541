package county.bigtree.registry.upkeep.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.upkeep.Disk;
import county.bigtree.registry.upkeep.ReadUpkeep;
import county.bigtree.registry.upkeep.Trouble;
import county.bigtree.registry.upkeep.UpkeepRun;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * How the register is kept safe.
 */
@RestController
@Tag(name = "Upkeep", description = "For administrators: whether the register is kept safe.")
class UpkeepController {

	private final ReadUpkeep reading;

	UpkeepController(ReadUpkeep reading) {
		this.reading = reading;
	}

	@GetMapping("/api/v1/upkeep")
	@Access(Who.ADMINISTRATOR)
	@Operation(operationId = "getUpkeep",
			summary = "What is wrong with how the register is kept, which archives there are, and when it was last looked whether it is whole")
	UpkeepJson get() {
		ReadUpkeep.Kept kept = this.reading.read();
		return new UpkeepJson(kept.troubles().stream().map(TroubleJson::from).toList(),
				kept.runs().stream().map(UpkeepRunJson::from).toList(), kept.archiving(), kept.folder(), kept.files(),
				kept.disks());
	}

	/**
	 * How the register is kept.
	 *
	 * @param archiving whether the node that answers takes an archive each day
	 * @param folder of the archives on that node, or null
	 * @param files in that folder, the newest first
	 * @param disks on which that node keeps data
	 */
	record UpkeepJson(List<TroubleJson> troubles, List<UpkeepRunJson> runs, boolean archiving, @Nullable String folder,
			List<ReadUpkeep.ArchiveFile> files, List<Disk> disks) {
	}

	/**
	 * Something that is wrong.
	 *
	 * @param kind {@code archive-failed}, {@code archive-missing}, {@code not-whole},
	 * {@code verify-failed}, {@code trial-failed}, {@code disk-full} or
	 * {@code notices-stuck}
	 * @param place node and folder, where one of several has it; else empty
	 */
	record TroubleJson(String kind, String place, Instant since, @Nullable String detail) {

		static TroubleJson from(Trouble trouble) {
			return new TroubleJson(trouble.kind(), trouble.place(), trouble.since(), trouble.detail());
		}

	}

	/**
	 * Something that was done.
	 *
	 * @param kind {@code archive}; {@code verify}: whether the register is whole;
	 * {@code trial}: an archive restored into a scratch place
	 * @param dueOn the day (UTC) for which it was done; of a trial the first of the month
	 * @param outcome {@code well}, {@code not-well}: something is wrong, or
	 * {@code failed}; null while it is done
	 * @param bytes of an archive
	 */
	record UpkeepRunJson(String kind, LocalDate dueOn, String node, Instant beganAt, @Nullable Instant endedAt,
			@Nullable String outcome, @Nullable String detail, @Nullable Long bytes) {

		static UpkeepRunJson from(UpkeepRun run) {
			return new UpkeepRunJson(run.kind(), run.dueOn(), run.node(), run.beganAt(), run.endedAt(), run.outcome(),
					run.detail(), run.bytes());
		}

	}

}
