package county.bigtree.registry.transfer;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Files that were brought to be taken in, kept while a coordinator says what their
 * columns mean and rehearses it. They go once they are taken in, and after {@value #DAYS}
 * days.
 */
@Service
public class ImportFiles {

	/** How long a file is kept at most: common practice, no source. */
	public static final int DAYS = 7;

	private static final int SHOWN = 10;

	private static final int GUESSED_FROM = 500;

	private final StartImport starting;

	private final RegisterClock clock;

	private final JdbcClient jdbc;

	private final JsonMapper json;

	ImportFiles(StartImport starting, RegisterClock clock, JdbcClient jdbc, JsonMapper json) {
		this.starting = starting;
		this.clock = clock;
		this.jdbc = jdbc;
		this.json = json;
	}

	/**
	 * Keeps a file that can be read, and answers its id.
	 * @param county a county of this register
	 * @throws Problem where the file can't be read
	 */
	@Transactional
	public UUID bring(Actor actor, String county, byte[] file) {
		TableFile.of(file).countRows();
		UUID id = Uuid7.next();
		this.jdbc.sql(
				"insert into import_file (id, county, brought_by, brought_at, file) values (:id, :county, :by, :at, :file)")
			.param("id", id)
			.param("county", county)
			.param("by", actor.id())
			.param("at", SqlTime.of(this.clock.now()))
			.param("file", file)
			.update();
		return id;
	}

	/**
	 * The files of a county that wait, the latest first.
	 */
	@Transactional(readOnly = true)
	public List<Brought> of(String county) {
		return this.jdbc.sql(
				"select id, county, brought_at, mapping::text as mapping, file from import_file where county = ? order by brought_at desc, id")
			.param(county)
			.query((row,
					number) -> brought(new Kept(row.getObject("id", UUID.class), row.getString("county"),
							SqlTime.get(row, "brought_at"), row.getString("mapping"), row.getBytes("file"))))
			.list();
	}

	/**
	 * A file, for a coordinator of its county.
	 * @throws Problem of not being found, for anyone else
	 */
	@Transactional(readOnly = true)
	public Brought get(Actor actor, UUID id) {
		return brought(kept(actor, id));
	}

	/**
	 * Takes the file in as the mapping says, or rehearses it, and answers the import's
	 * id. A file that is taken in is kept here no longer.
	 */
	@Transactional
	public UUID takeIn(Actor actor, UUID id, MappingBody mapping) {
		Kept kept = kept(actor, id);
		UUID job = this.starting.start(actor, kept.county(), kept.file(), mapping);
		if (Boolean.TRUE.equals(mapping.dryRun())) {
			this.jdbc.sql("update import_file set mapping = ?::jsonb where id = ?")
				.params(this.json.writeValueAsString(mapping), id)
				.update();
		}
		else {
			delete(id);
		}
		return job;
	}

	/**
	 * Throws a file away.
	 */
	@Transactional
	public void throwAway(Actor actor, UUID id) {
		delete(kept(actor, id).id());
	}

	/** Throws away what has waited too long. */
	@Scheduled(cron = "0 27 * * * *", zone = "UTC")
	@Transactional
	int throwOldAway() {
		return this.jdbc.sql("delete from import_file where brought_at < ?")
			.param(SqlTime.of(this.clock.now().minus(Duration.ofDays(DAYS))))
			.update();
	}

	private void delete(UUID id) {
		this.jdbc.sql("delete from import_file where id = ?").param(id).update();
	}

	private Kept kept(Actor actor, UUID id) {
		return this.jdbc
			.sql("select id, county, brought_at, mapping::text as mapping, file from import_file where id = ?")
			.param(id)
			.query((row, number) -> new Kept(row.getObject("id", UUID.class), row.getString("county"),
					SqlTime.get(row, "brought_at"), row.getString("mapping"), row.getBytes("file")))
			.optional()
			.filter((found) -> actor.isCoordinatorOf(found.county()))
			.orElseThrow(() -> Problem.notFound("No file that waits to be taken in has this id."));
	}

	private Brought brought(Kept kept) {
		TableFile table = TableFile.of(kept.file());
		List<TableFile.Row> looked = new ArrayList<>();
		int[] rows = new int[1];
		table.forEach((row) -> {
			rows[0]++;
			if (looked.size() < GUESSED_FROM) {
				looked.add(row);
			}
		});
		MappingBody guess = MappingGuess.of(table.header(), looked.stream().map(TableFile.Row::cells).toList());
		String tried = kept.mapping();
		return new Brought(kept.id(), kept.county(), kept.broughtAt(), kept.broughtAt().plus(Duration.ofDays(DAYS)),
				rows[0], table.header(),
				looked.stream().limit(SHOWN).map((row) -> new FirstRow(row.number(), row.cells())).toList(), guess,
				(tried != null) ? this.json.readValue(tried, MappingBody.class) : null);
	}

	private record Kept(UUID id, String county, Instant broughtAt, @Nullable String mapping, byte[] file) {
	}

	/**
	 * A file that waits.
	 *
	 * @param keptUntil when it is thrown away
	 * @param rows how many it has
	 * @param columns their names
	 * @param firstRows the first rows, as they stand in the file
	 * @param guess what its columns may mean, by their names and by what stands in them
	 * @param mapping with which it was last rehearsed, or null
	 */
	public record Brought(UUID id, String county, Instant broughtAt, Instant keptUntil, int rows, List<String> columns,
			List<FirstRow> firstRows, MappingBody guess, @Nullable MappingBody mapping) {
	}

	/**
	 * A row of the file.
	 *
	 * @param row its number in the file
	 */
	public record FirstRow(int row, List<String> cells) {
	}

}
