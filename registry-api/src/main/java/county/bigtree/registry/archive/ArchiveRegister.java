package county.bigtree.registry.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.LongConsumer;

import javax.sql.DataSource;

import county.bigtree.db.DatabaseMigrations;
import county.bigtree.registry.photo.store.PicturesInUse;
import county.bigtree.registry.photo.store.StoreAway;
import county.bigtree.registry.photo.store.StoredPictures;
import org.flywaydb.core.Flyway;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Service;

/**
 * Writes the whole register, as it stands at one instant, into one file, while others go
 * on changing it. Passwords and all that lets somebody in stay behind.
 */
@Service
public class ArchiveRegister {

	/** Pictures are large: as many as this are fetched at once. */
	private static final int PICTURES_AT_ONCE = 4;

	private final DataSource dataSource;

	private final ObjectProvider<StoredPictures> stored;

	ArchiveRegister(DataSource dataSource, ObjectProvider<StoredPictures> stored) {
		this.dataSource = dataSource;
		this.stored = stored;
	}

	/**
	 * Writes the archive. If it comes to nothing, for whatever reason, no file of that
	 * name is there.
	 * @throws UnusableArchive if there is no register, or the file can't be written
	 */
	public ArchiveManifest archive(Path target, ArchiveProgress progress) {
		String schema = DatabaseMigrations.version(migrations())
			.orElseThrow(() -> new UnusableArchive("There is no register in this database: nothing to archive."));
		try (UnfinishedFile file = UnfinishedFile.begin(target)) {
			ArchiveManifest manifest = write(file, schema, progress);
			file.finish();
			return manifest;
		}
		catch (IOException ex) {
			throw new UnusableArchive(target + " could not be written (" + ex.getMessage() + "): nothing was kept.",
					ex);
		}
		catch (StoreAway ex) {
			throw new UnusableArchive(ex.getMessage() + ": nothing was kept.", ex);
		}
		catch (SQLException ex) {
			throw new UnusableArchive("The register could not be read (" + ex.getMessage() + "): nothing was kept.",
					ex);
		}
	}

	private Flyway migrations() {
		return DatabaseMigrations
			.configure(Flyway.configure().dataSource(this.dataSource), DatabaseMigrations.NO_SERVICE_ROLE)
			.load();
	}

	private ArchiveManifest write(UnfinishedFile file, String schema, ArchiveProgress progress)
			throws IOException, SQLException {
		try (Connection connection = this.dataSource.getConnection()) {
			PicturesInUse.begin(connection);
			try {
				connection.setAutoCommit(false);
				Snapshot snapshot = Snapshot.take(connection);
				try (ArchiveWriter archive = new ArchiveWriter(file.stream(), snapshot.takenAt())) {
					return write(archive, snapshot, schema, progress);
				}
			}
			finally {
				connection.rollback();
				connection.setAutoCommit(true);
				PicturesInUse.end(connection);
			}
		}
	}

	private ArchiveManifest write(ArchiveWriter archive, Snapshot snapshot, String schema, ArchiveProgress progress)
			throws IOException, SQLException {
		List<RegisterTable> tables = RegisterTables.read(snapshot.connection());
		ArchiveHead head = new ArchiveHead(ArchiveFormat.NAME, ArchiveFormat.VERSION, schema, release(),
				snapshot.takenAt(), snapshot.repeatables(), tables.stream().map(RegisterTable::name).toList());
		archive.add(ArchiveFormat.HEAD, ArchiveFormat.JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(head));
		archive.add(ArchiveFormat.GUIDE, guide());
		addSchema(archive, snapshot);
		long all = snapshot.rows(tables);
		long before = 0;
		for (RegisterTable table : tables) {
			long passed = before;
			before += new CopyTable(table, archive, (rows) -> progress.at("rows", passed + rows, all))
				.copy(snapshot.connection());
		}
		if (tables.stream().anyMatch((table) -> table.name().equals(RegisterTables.PICTURES))) {
			addPictures(archive, snapshot, progress);
		}
		return archive.finish();
	}

	/** The migrations as they ran, by which anybody can make the tables again. */
	private static void addSchema(ArchiveWriter archive, Snapshot snapshot) throws IOException, SQLException {
		PathMatchingResourcePatternResolver resources = new PathMatchingResourcePatternResolver();
		for (String script : snapshot.scripts()) {
			Resource resource = resources.getResource("classpath:db/migration/" + script);
			try (InputStream content = resource.getInputStream()) {
				archive.add(ArchiveFormat.schema(script), content.readAllBytes());
			}
		}
	}

	private void addPictures(ArchiveWriter archive, Snapshot snapshot, ArchiveProgress progress)
			throws IOException, SQLException {
		long all = snapshot.count("photo_body");
		LongConsumer told = (done) -> progress.at("pictures", done, all);
		try (Statement statement = snapshot.connection().createStatement()) {
			statement.setFetchSize(PICTURES_AT_ONCE);
			try (ResultSet rows = statement.executeQuery("select * from photo_body order by photo, width")) {
				boolean allHere = !has(rows, "object");
				for (long done = 1; rows.next(); done++) {
					archive.add(ArchiveFormat.photo(rows.getObject("photo", UUID.class), rows.getInt("width")),
							(allHere || rows.getString("object") == null) ? rows.getBytes("body") : stored(rows));
					told.accept(done);
				}
			}
		}
	}

	/** A register of an earlier schema is archived as it stands. */
	private static boolean has(ResultSet rows, String column) throws SQLException {
		for (int index = 1; index <= rows.getMetaData().getColumnCount(); index++) {
			if (rows.getMetaData().getColumnName(index).equals(column)) {
				return true;
			}
		}
		return false;
	}

	private byte[] stored(ResultSet row) throws SQLException {
		String photo = row.getString("photo");
		return this.stored.getObject()
			.find(row.getString("object"), row.getBytes("salt"), row.getBytes("digest"))
			.orElseThrow(() -> new UnusableArchive("A picture of the photo " + photo
					+ " is not in the object store as it was put there: nothing was kept. Put it back or erase the photo."));
	}

	private static byte[] guide() throws IOException {
		try (InputStream guide = Objects
			.requireNonNull(ArchiveRegister.class.getResourceAsStream("/archive/" + ArchiveFormat.GUIDE))) {
			return guide.readAllBytes();
		}
	}

	private static String release() {
		return Objects.requireNonNullElse(ArchiveRegister.class.getPackage().getImplementationVersion(),
				"not packaged");
	}

}
