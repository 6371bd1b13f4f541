package county.bigtree.registry.openness;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.journal.RegisterClock;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Writes what is open of a county as a Darwin Core archive: trees as occurrences, their
 * figures as measurements or facts. All of it is of one snapshot, and as long as nothing
 * changes it is the same to the byte all day. Give it a file to write to and not a
 * network: it holds a connection of the database until it is done.
 */
@Service
public class ExportArchive {

	/** The first that a ZIP file can say. */
	private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

	private final ReadOpenTrees trees;

	private final OpenDataSettings settings;

	private final RegisterClock clock;

	ExportArchive(ReadOpenTrees trees, OpenDataSettings settings, RegisterClock clock) {
		this.trees = trees;
		this.settings = settings;
		this.clock = clock;
	}

	/**
	 * Writes the archive.
	 * @param address where the county's page is
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public void write(ReadCounties.County county, String address, OutputStream to) throws IOException {
		DarwinTable<OpenTree> occurrences = Occurrences.table(county, this.settings);
		DarwinTable<MeasuredFacts.Fact> facts = MeasuredFacts.table();
		Spread spread = new Spread();
		ZipOutputStream zip = new ZipOutputStream(to, StandardCharsets.UTF_8);
		entry(zip, "meta.xml", (writer) -> ArchiveXml.meta(writer, occurrences, facts));
		entry(zip, occurrences.file(), (writer) -> {
			Lines lines = new Lines(writer).add(occurrences.head());
			this.trees.each(county.key(), (page) -> page.forEach((tree) -> {
				spread.see(tree);
				lines.add(occurrences.line(tree));
			}));
		});
		entry(zip, facts.file(), (writer) -> {
			Lines lines = new Lines(writer).add(facts.head());
			this.trees.each(county.key(),
					(page) -> page.stream().flatMap(MeasuredFacts::of).forEach((fact) -> lines.add(facts.line(fact))));
		});
		entry(zip, "eml.xml",
				(writer) -> ArchiveXml.eml(writer,
						new ArchiveXml.About(county,
								this.clock.now().atZone(ZoneId.of(county.timeZone())).toLocalDate(), address,
								this.settings.license(), spread.extent())));
		zip.finish();
	}

	private static void entry(ZipOutputStream zip, String name, Consumer<Writer> content) throws IOException {
		ZipEntry entry = new ZipEntry(name);
		entry.setTimeLocal(NO_TIME);
		zip.putNextEntry(entry);
		Writer writer = new BufferedWriter(new OutputStreamWriter(zip, StandardCharsets.UTF_8));
		try {
			content.accept(writer);
		}
		catch (UncheckedIOException ex) {
			throw new IOException(ex);
		}
		writer.flush();
		zip.closeEntry();
	}

}
