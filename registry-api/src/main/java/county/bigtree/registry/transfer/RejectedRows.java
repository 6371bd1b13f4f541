package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;

import county.bigtree.registry.csv.SafeCsv;
import county.bigtree.registry.people.Actor;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Gives back the rows that an import rejected, as they came, each with its number in the
 * file and the reason: to be mended and sent again.
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
		SafeCsv csv = new SafeCsv().line(line(OWN, header, theirs, header.size()));
		this.jobs.forEachRejected(id, (row) -> csv
			.line(line(List.of(Integer.toString(row.number()), row.reason()), row.cells(), theirs, header.size())));
		return csv.toString();
	}

	private static List<String> line(List<String> own, List<String> cells, int[] theirs, int width) {
		List<String> line = new ArrayList<>(own);
		IntStream.of(theirs).filter((index) -> index < cells.size()).mapToObj(cells::get).forEach(line::add);
		// What stands beyond the header is why the row was rejected.
		line.addAll(cells.subList(Math.min(width, cells.size()), cells.size()));
		return line;
	}

}
