package county.bigtree.registry.upkeep;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

import county.bigtree.registry.notice.StuckNotices;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;

/**
 * Looks for what goes wrong between the runs: disks that fill up, notices that are stuck,
 * archives that are missing, and runs whose node died.
 */
@Service
class WatchOver {

	/** Without an archive, though one should be taken each day. */
	static final Duration WITHOUT_ARCHIVE = Duration.ofHours(50);

	private final Troubles troubles;

	private final UpkeepRuns runs;

	private final TakeArchive archives;

	private final StuckNotices stuck;

	private final WatchedDisks disks;

	private @Nullable Instant began;

	WatchOver(Troubles troubles, UpkeepRuns runs, TakeArchive archives, StuckNotices stuck, WatchedDisks disks) {
		this.troubles = troubles;
		this.runs = runs;
		this.archives = archives;
		this.stuck = stuck;
		this.disks = disks;
	}

	/** Looks once. */
	void look(Instant now) {
		if (this.began == null) {
			this.began = now;
		}
		this.disks.look()
			.forEach((disk) -> told(disk.full(), TroubleKind.DISK_FULL, this.runs.node() + " " + disk.folder(),
					disk.percent() + " %"));
		this.troubles.forgetUnseen(TroubleKind.DISK_FULL);
		told("stuck".equals(this.stuck.state()), TroubleKind.NOTICES_STUCK, "", null);
		if (this.archives.isOn()) {
			told(isArchiveMissing(this.began, now), TroubleKind.ARCHIVE_MISSING, "", null);
		}
		left(UpkeepRun.ARCHIVE, TroubleKind.ARCHIVE_FAILED);
		left(UpkeepRun.VERIFY, TroubleKind.VERIFY_FAILED);
		left(UpkeepRun.TRIAL, TroubleKind.TRIAL_FAILED);
	}

	private void told(boolean wrong, TroubleKind kind, String place, @Nullable String detail) {
		if (wrong) {
			this.troubles.found(kind, place, detail);
		}
		else {
			this.troubles.mended(kind, place);
		}
	}

	/** What was switched off for a week has its time to take one. */
	private boolean isArchiveMissing(Instant began, Instant now) {
		Instant last = this.runs.lastWell(UpkeepRun.ARCHIVE)
			.map((run) -> Objects.requireNonNull(run.endedAt()))
			.orElse(Instant.MIN);
		Instant since = last.isBefore(began) ? began : last;
		return since.isBefore(now.minus(WITHOUT_ARCHIVE));
	}

	private void left(String kind, TroubleKind trouble) {
		if (this.runs.isLeft(kind)) {
			this.troubles.found(trouble, "", "It was begun and never ended: its node was stopped or died.");
		}
	}

}
