package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.DefaultUncertainty;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * A distance that was taped or paced once and entered twice: as the level distance from
 * which a height was sighted, and as an axis or a spoke of the crown. An error of it goes
 * into both figures (JCGM 100:2008, 5.2.2). Nobody is asked whether two like entries are
 * one reading: they are taken as one, which makes the uncertainty of the points the
 * larger, never the smaller, if they were not (proposal).
 */
final class SharedBaseline {

	private SharedBaseline() {
	}

	/** How far height and crown err together by it: 0 where no entries are alike. */
	static double correlation(@Nullable HeightReading height, @Nullable CrownReading crown, double heightU,
			double crownU) {
		Length baseline = baseline(height);
		if (height == null || crown == null || baseline == null || heightU == 0 || crownU == 0) {
			return 0;
		}
		double shared = Math.min(u(baseline, InstrumentDefaults.DISTANCE), u(baseline, edge(crown)));
		return Math.min(1, byBaseline(height) * share(crown, baseline) * shared * shared / (heightU * crownU));
	}

	private static @Nullable Length baseline(@Nullable HeightReading height) {
		if (height instanceof TangentHeight tangent) {
			return tangent.horizontalDistance();
		}
		return (height instanceof EqualArmHeight arm) ? arm.distance() : null;
	}

	/** What a foot of it adds to the height, in feet. */
	private static double byBaseline(HeightReading height) {
		if (height instanceof TangentHeight tangent) {
			return tangent.topAngle().tangent() - tangent.baseAngle().tangent();
		}
		if (height instanceof EqualArmHeight arm && arm.stickLength() != null && arm.reach() != null) {
			return arm.stickLength().inches() / arm.reach().inches();
		}
		return 1;
	}

	/** What a foot of it adds to the spread, in feet: as the one entry that is alike. */
	private static double share(CrownReading crown, Length baseline) {
		if (crown instanceof CrownAxes axes && axes.axes().contains(baseline)) {
			return 1.0 / axes.axes().size();
		}
		if (crown instanceof CrownSpokes spokes) {
			double[] weights = spokes.weights();
			List<Length> radii = spokes.radii();
			double most = 0;
			for (int i = 0; i < weights.length; i++) {
				most = radii.get(i).equals(baseline) ? Math.max(most, 2 * weights[i]) : most;
			}
			return most;
		}
		return 0;
	}

	private static DefaultUncertainty edge(CrownReading crown) {
		return (crown instanceof CrownSpokes) ? InstrumentDefaults.CROWN_RADIUS : InstrumentDefaults.CROWN_AXIS;
	}

	private static double u(Length length, DefaultUncertainty byDefault) {
		return length.estimate(LengthUnit.FT, byDefault).standardUncertainty();
	}

}
