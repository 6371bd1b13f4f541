package county.bigtree.registry.command;

import county.bigtree.registry.measurement.ReduceAgain;
import org.springframework.stereotype.Service;

/**
 * Reduces readings again by the formulas of this release where older ones were used last.
 */
@Service
class ReduceReadings implements RegisterCommand {

	private final ReduceAgain reducing;

	ReduceReadings(ReduceAgain reducing) {
		this.reducing = reducing;
	}

	@Override
	public String word() {
		return "reduce";
	}

	@Override
	public int run(Report report) {
		int all = 0;
		for (String county : this.reducing.counties()) {
			int again = this.reducing.county(county);
			if (again > 0) {
				report.line("%s: %,d measurements were reduced again", county, again);
			}
			all += again;
		}
		report.line((all == 0) ? "All readings were reduced by today's formulas: nothing was changed."
				: "Reduced again: %,d measurements.", all);
		return WELL;
	}

}
