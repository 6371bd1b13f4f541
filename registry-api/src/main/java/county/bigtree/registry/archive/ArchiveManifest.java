package county.bigtree.registry.archive;

import java.util.List;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;

/**
 * What an archive says at its end of all that it holds. The digest of several files is
 * that of their bytes one after the other, as {@code tar -xOf} writes them.
 */
public record ArchiveManifest(List<Group> groups) {

	public ArchiveManifest {
		groups = List.copyOf(groups);
	}

	/** How many rows there are in all tables. */
	public long rows() {
		return this.groups.stream().map(Group::rows).filter((rows) -> rows != null).mapToLong(Long::longValue).sum();
	}

	/** How many pictures there are. */
	public long pictures() {
		return this.groups.stream()
			.filter((group) -> group.path().equals(ArchiveFormat.PHOTOS))
			.mapToLong(Group::files)
			.sum();
	}

	/** The digest of a group; null where there is none of that path. */
	public @Nullable String digest(String path) {
		return this.groups.stream()
			.filter((group) -> group.path().equals(path))
			.map(Group::sha256)
			.findFirst()
			.orElse(null);
	}

	/**
	 * A file, or all beneath a path.
	 *
	 * @param rows of a table; null for what is none
	 * @param bytes of all its files together, unpacked
	 * @param sha256 in hexadecimal
	 */
	@JsonInclude(JsonInclude.Include.NON_NULL)
	public record Group(String path, long files, @Nullable Long rows, long bytes, String sha256) {

		/** Whether these are the same bytes in as many files. */
		boolean isSameAs(Group other) {
			return this.path.equals(other.path) && this.files == other.files && this.bytes == other.bytes
					&& this.sha256.equals(other.sha256);
		}

	}

}
