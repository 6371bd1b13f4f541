package county.bigtree.registry.upkeep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.LocalDate;

import county.bigtree.registry.archive.ArchiveRegister;
import county.bigtree.registry.erasure.ErasureList;

import org.springframework.stereotype.Service;

/**
 * Takes the day's archive, on one node that has a folder for it. Beside it goes the list
 * of what was erased, which is needed where an earlier archive is restored; then the
 * oldest archives go.
 */
@Service
class TakeArchive {

	/** What was erased, newest state. */
	static final String ERASED = "erased.csv";

	private final ArchiveRegister archiveRegister;

	private final ErasureList erasures;

	private final ArchiveFolder folder;

	private final ArchiveSettings settings;

	private final Recording recording;

	TakeArchive(ArchiveRegister archiveRegister, ErasureList erasures, ArchiveFolder folder, ArchiveSettings settings,
			Recording recording) {
		this.archiveRegister = archiveRegister;
		this.erasures = erasures;
		this.folder = folder;
		this.settings = settings;
		this.recording = recording;
	}

	/** Whether this node takes any. */
	boolean isOn() {
		return this.settings.daily() && this.folder.path().isPresent();
	}

	/** Takes it, if it was not taken yet. */
	void run(LocalDate day) {
		if (isOn()) {
			this.recording.run(UpkeepRun.ARCHIVE, day, TroubleKind.ARCHIVE_FAILED, this::archive);
		}
	}

	private Recording.Ended archive(Instant began) throws IOException {
		Path file = this.folder.next(ArchiveFolder.DAILY, began);
		this.archiveRegister.archive(file, (what, done, of) -> {
		});
		writeErasures();
		this.folder.keep(ArchiveFolder.DAILY, this.settings.keep());
		this.recording.mended(TroubleKind.ARCHIVE_MISSING);
		return Recording.Ended.well(file.toString(), Files.size(file));
	}

	/** The list that is there stays until the new one is whole. */
	private void writeErasures() throws IOException {
		Path list = this.folder.open().resolve(ERASED);
		Path fresh = list.resolveSibling(ERASED + ".part");
		Files.deleteIfExists(fresh);
		this.erasures.write(fresh);
		Files.move(fresh, list, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
	}

}
