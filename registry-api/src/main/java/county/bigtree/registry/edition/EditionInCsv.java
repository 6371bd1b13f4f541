package county.bigtree.registry.edition;

import java.nio.charset.StandardCharsets;

import county.bigtree.registry.csv.SafeCsv;

/**
 * An edition's list as CSV (RFC 4180): a line for each ranked tree, then one for each
 * filing that was in time and is undecided. Girth in inches, height and crown spread in
 * feet.
 */
final class EditionInCsv {

	private EditionInCsv() {
	}

	static byte[] write(EditionList list) {
		SafeCsv csv = new SafeCsv().line("species", "scientificName", "commonName", "rank", "tag", "title", "points",
				"pointsStandardUncertainty", "girthInches", "heightFeet", "crownSpreadFeet", "measuredOn", "stale",
				"pending", "filedOn", "edition", "asOf", "knownAt", "journalSeq", "journalHash");
		list.species()
			.forEach((species) -> species.trees()
				.forEach((row) -> csv.line(species.species(), species.scientificName(), species.commonName(),
						row.rank(), row.tag(), row.title(), row.points(), row.pointsStandardUncertainty(),
						row.girthInches(), row.heightFeet(), row.crownSpreadFeet(), row.measuredOn(), row.stale(), null,
						null, list.edition(), list.asOf(), list.knownAt(), list.headSeq(), list.headHash())));
		list.pending()
			.forEach((filing) -> csv.line(filing.species(), filing.scientificName(), filing.commonName(), null,
					filing.tag(), null, null, null, null, null, null, null, null, filing.kind(), filing.filedOn(),
					list.edition(), list.asOf(), list.knownAt(), list.headSeq(), list.headHash()));
		return csv.toString().getBytes(StandardCharsets.UTF_8);
	}

}
