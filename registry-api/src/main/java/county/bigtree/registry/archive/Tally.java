package county.bigtree.registry.archive;

import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/**
 * Counts and digests the members of an archive as they pass, by group. Groups are few:
 * what it keeps does not grow with the register.
 */
final class Tally {

	private final Map<String, Sum> sums = new LinkedHashMap<>();

	/** Begins a member. */
	Sum member(String name) {
		Sum sum = this.sums.computeIfAbsent(ArchiveFormat.group(name), (group) -> new Sum());
		sum.files++;
		return sum;
	}

	/** Counts rows of a table; of none, too, so that it is told of. */
	void rows(String table, long rows) {
		Sum sum = this.sums.computeIfAbsent("tables/" + table, (group) -> new Sum());
		sum.rows = ((sum.rows != null) ? sum.rows : 0) + rows;
	}

	/** What has passed; the digests are at their end then. */
	ArchiveManifest manifest() {
		List<ArchiveManifest.Group> groups = new ArrayList<>();
		this.sums.forEach((path, sum) -> groups.add(new ArchiveManifest.Group(path, sum.files, sum.rows, sum.bytes,
				HexFormat.of().formatHex(sum.digest.digest()))));
		return new ArchiveManifest(groups);
	}

	/**
	 * What has passed of a group.
	 */
	static final class Sum {

		private final MessageDigest digest = ArchiveFormat.sha256();

		private long files;

		private long bytes;

		private @Nullable Long rows;

		void add(byte[] content, int offset, int length) {
			this.digest.update(content, offset, length);
			this.bytes += length;
		}

	}

}
