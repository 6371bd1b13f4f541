package county.bigtree.registry.archive;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.function.LongConsumer;

import org.postgresql.PGConnection;
import org.postgresql.copy.CopyOut;

/**
 * Writes the rows of one table as CSV, in files of some megabytes, each with the line of
 * its columns before it. No more than one file and one row is in memory.
 */
final class CopyTable {

	private static final int FILE_BYTES = 4 << 20;

	private final RegisterTable table;

	private final ArchiveWriter archive;

	private final LongConsumer progress;

	private final Part part = new Part();

	private byte[] header = new byte[0];

	private int files;

	private long rows;

	CopyTable(RegisterTable table, ArchiveWriter archive, LongConsumer progress) {
		this.table = table;
		this.archive = archive;
		this.progress = progress;
	}

	/**
	 * Copies all rows, and answers how many those were.
	 */
	long copy(Connection connection) throws SQLException, IOException {
		CopyOut copy = connection.unwrap(PGConnection.class).getCopyAPI().copyOut(this.table.copyOut());
		try {
			// The server sends a message for each line of the header and each row
			// (PostgreSQL documentation, "COPY Operations" of the protocol).
			for (byte[] line = copy.readFromCopy(); line != null; line = copy.readFromCopy()) {
				take(line);
			}
		}
		finally {
			if (copy.isActive()) {
				copy.cancelCopy();
			}
		}
		if (this.files == 0 || this.part.size() > this.header.length) {
			write();
		}
		this.archive.rows(this.table.name(), this.rows);
		return this.rows;
	}

	private void take(byte[] line) throws IOException {
		if (this.header.length == 0) {
			this.header = line;
			this.part.write(line, 0, line.length);
			return;
		}
		if (this.part.size() > this.header.length && this.part.size() + line.length > FILE_BYTES) {
			write();
			this.part.write(this.header, 0, this.header.length);
		}
		this.part.write(line, 0, line.length);
		this.progress.accept(++this.rows);
	}

	private void write() throws IOException {
		this.archive.add(ArchiveFormat.tablePart(this.table.name(), ++this.files), this.part.content(),
				this.part.size());
		this.part.reset();
	}

	/**
	 * Bytes that are handed on without being copied.
	 */
	private static final class Part extends ByteArrayOutputStream {

		byte[] content() {
			return this.buf;
		}

	}

}
