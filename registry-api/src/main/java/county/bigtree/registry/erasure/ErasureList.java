package county.bigtree.registry.erasure;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What was erased, by identifiers that tell nobody what it was: kept beside the archives,
 * so that an archive from before can be restored without bringing it back. A file of CSV
 * with the columns {@code what}, {@code id} and {@code erased_at}, in the order in which
 * it was erased.
 */
@Component
public class ErasureList {

	private static final String ERASED = """
			select 'person' as what, id, erased_at from person where erased_at is not null
			union all select 'words', text, recorded_at from text_erasure
			union all select 'photo', photo, recorded_at from photo_erasure
			union all select 'untaken-rows', r.job, j.finished_at from (select distinct job from import_rejection r
			  where not exists (select from import_rejected_cells c where c.job = r.job and c.row_number = r.row_number)) r
			  join import_job j on j.id = r.job
			order by 3, 1, 2""";

	private final JdbcClient jdbc;

	ErasureList(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Writes the list into a file that is not there yet.
	 * @return how many there are
	 */
	public int write(Path file) throws IOException {
		List<String[]> erased = this.jdbc.sql(ERASED)
			.query((row, number) -> new String[] { row.getString(1), row.getString(2), row.getString(3) })
			.list();
		List<String> lines = new ArrayList<>(List.of("what,id,erased_at"));
		erased.forEach((one) -> lines.add(CSVFormat.RFC4180.format((Object[]) one)));
		Files.writeString(file, String.join("\r\n", lines) + "\r\n", StandardOpenOption.CREATE_NEW);
		return erased.size();
	}

	/**
	 * Reads such a file.
	 * @throws IllegalArgumentException if it is none
	 */
	public static List<Erased> read(Path file) throws IOException {
		List<Erased> erased = new ArrayList<>();
		try (Reader source = Files.newBufferedReader(file, StandardCharsets.UTF_8);
				CSVParser csv = CSVParser.parse(source,
						CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get())) {
			for (CSVRecord row : csv) {
				erased.add(new Erased(What.valueOf(row.get("what").replace('-', '_').toUpperCase(Locale.ROOT)),
						UUID.fromString(row.get("id"))));
			}
		}
		return erased;
	}

	/**
	 * Something that was erased.
	 */
	public record Erased(What what, UUID id) {
	}

	/**
	 * What can be erased.
	 */
	public enum What {

		/** An account for good, with all that its owner wrote and sent. */
		PERSON("select exists (select from person where id = ? and erased_at is null)"),

		/** A piece of text. */
		WORDS("select exists (select from text_body where id = ?)"),

		/** All pictures of a photo. */
		PHOTO("select exists (select from photo_body where photo = ?)"),

		/** Rows that an import did not take. */
		UNTAKEN_ROWS("select exists (select from import_rejected_cells where job = ?)");

		private final String there;

		What(String there) {
			this.there = there;
		}

		/** Asks by its id whether it has not been erased. */
		String there() {
			return this.there;
		}

	}

}
