package county.bigtree.registry.check;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;

import county.bigtree.domain.check.CountyForm;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * Real trees of one city of the Urban tree database (McPherson, E.G.; van Doorn, N.S.;
 * Peper, P.J. 2016, USDA Forest Service Research Data Archive, RDS-2016-0005) that have
 * all three figures, written as volunteers do: girth to a tenth of an inch, height and
 * spread to a foot.
 */
final class CityTrees {

	private static final double METRE = 1 / 0.3048;

	private static final double CENTIMETRE = 1 / 2.54;

	private CityTrees() {
	}

	static List<CountyForm.Grown> read(Reader city) throws IOException {
		List<CountyForm.Grown> trees = new ArrayList<>();
		for (CSVRecord row : CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get().parse(city)) {
			double girth = figure(row, "DBH (cm)") * Math.PI * CENTIMETRE;
			double height = figure(row, "TreeHt (m)") * METRE;
			double spread = figure(row, "AvgCdia (m)") * METRE;
			if (girth > 0 && height > 0 && spread > 0) {
				trees.add(new CountyForm.Grown(row.get("ScientificName").strip(), Math.round(girth * 10) / 10.0,
						Math.max(1, Math.round(height)), Math.max(1, Math.round(spread))));
			}
		}
		return trees;
	}

	private static double figure(CSVRecord row, String column) {
		String text = row.get(column).strip();
		return text.isEmpty() ? 0 : Double.parseDouble(text);
	}

}
