package county.bigtree.registry.archive;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * What an archive says of itself before all else.
 *
 * @param formatVersion of the layout of the file
 * @param schemaVersion the last migration of the register that was archived
 * @param release which wrote the archive
 * @param takenAt the instant whose register it holds
 * @param repeatables checksums of what the register was given by migrations that are
 * repeated when their source changes, by description: the species catalogue
 * @param tables in an order in which each row finds those that it names
 */
public record ArchiveHead(String format, int formatVersion, String schemaVersion, String release, Instant takenAt,
		Map<String, Integer> repeatables, List<String> tables) {

	public ArchiveHead {
		repeatables = Map.copyOf(repeatables);
		tables = List.copyOf(tables);
	}

	private static final Pattern SCHEMA_VERSION = Pattern.compile("[0-9]{12}");

	/**
	 * Refuses a file that this release can't read.
	 */
	void requireReadable() {
		if (!ArchiveFormat.NAME.equals(this.format)) {
			throw new UnusableArchive("This file is no archive of a register.");
		}
		if (this.formatVersion > ArchiveFormat.VERSION) {
			throw new UnusableArchive("The archive was written by a newer release (" + this.release + ", format "
					+ this.formatVersion + "; this release reads up to format " + ArchiveFormat.VERSION
					+ "): restore it with that release or a later one.");
		}
		if (this.formatVersion < 1 || !SCHEMA_VERSION.matcher(this.schemaVersion).matches()) {
			throw new UnusableArchive("The archive does not say of which version it is: it was changed.");
		}
	}

}
