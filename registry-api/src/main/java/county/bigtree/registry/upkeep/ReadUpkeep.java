package county.bigtree.registry.upkeep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;

/**
 * How the register is kept, for administrators.
 */
@Service
public class ReadUpkeep {

	/** Of each kind of run. */
	private static final int RUNS = 5;

	private final Troubles troubles;

	private final UpkeepRuns runs;

	private final WatchedDisks disks;

	private final ArchiveFolder folder;

	private final TakeArchive archives;

	ReadUpkeep(Troubles troubles, UpkeepRuns runs, WatchedDisks disks, ArchiveFolder folder, TakeArchive archives) {
		this.troubles = troubles;
		this.runs = runs;
		this.disks = disks;
		this.folder = folder;
		this.archives = archives;
	}

	/** As it is now, on the node that is asked. */
	public Kept read() {
		return new Kept(this.troubles.open(), this.runs.newest(RUNS), this.archives.isOn(),
				this.folder.path().map(Path::toString).orElse(null), files(), this.disks.look());
	}

	private List<ArchiveFile> files() {
		List<ArchiveFile> files = new ArrayList<>();
		for (Path file : this.folder.files()) {
			try {
				files.add(new ArchiveFile(ArchiveFolder.name(file), Files.size(file),
						Files.getLastModifiedTime(file).toInstant()));
			}
			catch (IOException ex) {
				// It went while it was looked at.
				continue;
			}
		}
		return files;
	}

	/**
	 * How the register is kept.
	 *
	 * @param archiving whether the node that was asked takes an archive each day
	 * @param folder of the archives on it, or null
	 */
	public record Kept(List<Trouble> troubles, List<UpkeepRun> runs, boolean archiving, @Nullable String folder,
			List<ArchiveFile> files, List<Disk> disks) {
	}

	/**
	 * An archive in the folder.
	 */
	public record ArchiveFile(String name, long bytes, Instant at) {
	}

}
