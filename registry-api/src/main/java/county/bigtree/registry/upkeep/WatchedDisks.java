package county.bigtree.registry.upkeep;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import county.bigtree.registry.database.OwnFolder;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/**
 * The disks on which this node keeps data: its own database and the archives. Those of a
 * database server elsewhere are for whoever runs that one to watch.
 */
@Component
class WatchedDisks {

	private static final Logger logger = LoggerFactory.getLogger(WatchedDisks.class);

	private static final int PERCENT = 100;

	private final ObjectProvider<OwnFolder> own;

	private final ArchiveFolder archives;

	private final UpkeepSettings settings;

	WatchedDisks(ObjectProvider<OwnFolder> own, ArchiveFolder archives, UpkeepSettings settings) {
		this.own = own;
		this.archives = archives;
		this.settings = settings;
	}

	/** How full they are. */
	List<Disk> look() {
		List<Disk> disks = new ArrayList<>();
		for (Path folder : folders()) {
			try {
				FileStore store = Files.getFileStore(folder);
				disks.add(disk(folder, store.getTotalSpace(), store.getUsableSpace()));
			}
			catch (IOException ex) {
				logger.warn("The disk of {} can't be looked at: {}", folder, ex.getClass().getSimpleName());
			}
		}
		return disks;
	}

	private Disk disk(Path folder, long bytes, long free) {
		int percent = (bytes > 0) ? (int) (PERCENT * (bytes - free) / bytes) : 0;
		return new Disk(folder.toString(), bytes, free, percent, percent >= this.settings.diskPercent());
	}

	private List<Path> folders() {
		List<Path> folders = new ArrayList<>();
		this.own.ifAvailable((folder) -> folders.add(folder.path().toAbsolutePath().normalize()));
		this.archives.path().ifPresent(folders::add);
		return folders.stream().filter(Files::isDirectory).distinct().toList();
	}

}
