package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;

import county.bigtree.registry.people.Actor;
import org.apache.commons.csv.CSVFormat;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Gives back the rows that an import rejected, as they came, each with its number in the
 * file and the reason: to be mended and sent again. Cells that a spreadsheet would take
 * for a formula get an apostrophe in front (OWASP, CSV Injection).
 */
@Component
public class RejectedRows {

	private static final List<String> OWN = List.of("rejected row", "rejected because");

	private final ImportJobs jobs;

	RejectedRows(ImportJobs jobs) {
		this.jobs = jobs;
	}

	/**
	 * The rejected rows as CSV (RFC 4180).
	 */
	@Transactional(readOnly = true)
	public String csv(Actor actor, UUID id) {
		ImportJob job = this.jobs.get(actor, id);
		List<String> header = this.jobs.header(job.id());
		// A file that came back mended has our columns already.
		int[] theirs = IntStream.range(0, header.size()).filter((index) -> !OWN.contains(header.get(index))).toArray();
		StringBuilder text = new StringBuilder();
		append(text, line(OWN, header, theirs, header.size()));
		this.jobs.forEachRejected(id, (row) -> append(text,
				line(List.of(Integer.toString(row.number()), row.reason()), row.cells(), theirs, header.size())));
		return text.toString();
	}

	private static void append(StringBuilder text, List<String> line) {
		text.append(CSVFormat.RFC4180.format(line.toArray())).append("\r\n");
	}

	private static List<String> line(List<String> own, List<String> cells, int[] theirs, int width) {
		List<String> line = new ArrayList<>(own);
		IntStream.of(theirs).filter((index) -> index < cells.size()).mapToObj(cells::get).forEach(line::add);
		// What stands beyond the header is why the row was rejected.
		line.addAll(cells.subList(Math.min(width, cells.size()), cells.size()));
		return line.stream().map(RejectedRows::harmless).toList();
	}

	private static String harmless(String cell) {
		boolean formula = !cell.isEmpty() && "=+-@\t\r\n".indexOf(cell.charAt(0)) >= 0;
		return (formula && !cell.matches("[+-]?[0-9]+(\\.[0-9]+)?")) ? "'" + cell : cell;
	}

}
