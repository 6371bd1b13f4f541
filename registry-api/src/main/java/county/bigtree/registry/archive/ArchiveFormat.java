package county.bigtree.registry.archive;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/**
 * How an archive is laid out: a tar file (POSIX.1-2001, pax) packed by gzip (RFC 1952),
 * whose members are JSON (RFC 8259), CSV as PostgreSQL writes it, JPEG and text. Told to
 * whoever has to read one in {@code docs/archive.md}.
 */
final class ArchiveFormat {

	static final String NAME = "county big-tree register archive";

	/** Raised when an earlier release could not read what is written now. */
	static final int VERSION = 1;

	/** The first member. */
	static final String HEAD = "archive.json";

	static final String GUIDE = "README.txt";

	/** The last member: without it an archive is not whole. */
	static final String MANIFEST = "manifest.json";

	static final String PHOTOS = "photos";

	static final String SCHEMA = "schema";

	static final JsonMapper JSON = JsonMapper.builder().build();

	private static final Pattern TABLE = Pattern.compile("(tables/([a-z][a-z0-9_]*))/[0-9]{6,}\\.csv");

	private static final Pattern PHOTO = Pattern.compile(PHOTOS + "/([0-9a-f-]{36})/([0-9]{1,9})\\.jpg");

	private ArchiveFormat() {
	}

	static String tablePart(String table, int number) {
		return "tables/%s/%06d.csv".formatted(table, number);
	}

	static String photo(UUID photo, int width) {
		return PHOTOS + "/" + photo + "/" + width + ".jpg";
	}

	static String schema(String script) {
		return SCHEMA + "/" + script;
	}

	/** The table of which a member holds rows, if it is such a one. */
	static @Nullable String table(String member) {
		Matcher found = TABLE.matcher(member);
		return found.matches() ? found.group(2) : null;
	}

	/** Which photo in which width a member is, if it is such a one. */
	static @Nullable PhotoName photo(String member) {
		Matcher found = PHOTO.matcher(member);
		return found.matches() ? new PhotoName(UUID.fromString(found.group(1)), Integer.parseInt(found.group(2)))
				: null;
	}

	/** Members of one group are counted and digested together. */
	static String group(String member) {
		Matcher found = TABLE.matcher(member);
		if (found.matches()) {
			return found.group(1);
		}
		if (member.startsWith(PHOTOS + "/")) {
			return PHOTOS;
		}
		return member.startsWith(SCHEMA + "/") ? SCHEMA : member;
	}

	static MessageDigest sha256() {
		try {
			return MessageDigest.getInstance("SHA-256");
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

	/**
	 * A picture's place in the archive.
	 */
	record PhotoName(UUID photo, int width) {
	}

}
