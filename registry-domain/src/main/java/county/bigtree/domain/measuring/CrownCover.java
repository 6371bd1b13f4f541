package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * The ground that a crown covers by its readings, for information: no rule of points asks
 * for it. Plane geometry.
 *
 * @param areas in square feet; that of the disc with the mean spread first
 * @param areaPreservingSpread the diameter in feet of the circle that covers as much,
 * wherever the stem stands; null where the readings tell no more than a mean
 */
public record CrownCover(List<Area> areas, @Nullable Estimate areaPreservingSpread) {

	public CrownCover {
		areas = List.copyOf(areas);
	}

	public static CrownCover of(CrownReading reading) {
		List<Area> areas = new ArrayList<>();
		areas.add(new Area(Form.DISC, disc(reading.estimate())));
		if (reading instanceof CrownSpokes spokes) {
			return ofSpokes(spokes, areas);
		}
		if (reading instanceof CrownAxes two && two.axes().size() == 2) {
			return ofTwoAxes(axis(two.axes().get(0)), axis(two.axes().get(1)), areas);
		}
		return new CrownCover(areas, null);
	}

	private static CrownCover ofSpokes(CrownSpokes spokes, List<Area> areas) {
		CrownOutline outline = spokes.outline();
		List<Double> radii = spokes.radiusUncertainties();
		double stem = spokes.stemRadiusUncertainty();
		areas.add(new Area(Form.POLYGON, outline.polygonArea(radii, stem)));
		areas.add(new Area(Form.SECTORS, outline.sectorArea(radii, stem)));
		return new CrownCover(areas, outline.areaPreservingSpread(radii, stem));
	}

	/** π/4 D1 D2, whose circle measures √(D1 D2) across. */
	private static CrownCover ofTwoAxes(Estimate first, Estimate second, List<Area> areas) {
		double products = Uncertainty.combined(second.value() * first.standardUncertainty(),
				first.value() * second.standardUncertainty());
		areas.add(new Area(Form.ELLIPSE,
				new Estimate(CrownOutline.ellipseArea(first.value(), second.value()), Math.PI / 4 * products)));
		double spread = Math.sqrt(first.value() * second.value());
		return new CrownCover(areas, new Estimate(spread, products / (2 * spread)));
	}

	/** π/4 W². */
	private static Estimate disc(Estimate spread) {
		return new Estimate(CrownOutline.ellipseArea(spread.value(), spread.value()),
				Math.PI / 2 * spread.value() * spread.standardUncertainty());
	}

	private static Estimate axis(Length axis) {
		return axis.estimate(LengthUnit.FT, InstrumentDefaults.CROWN_AXIS);
	}

	/** What the crown's outline is taken for. The code is what JSON writes. */
	public enum Form {

		/** A circle as wide as the mean spread: the spread itself, squared. */
		DISC("disc"),
		/** An ellipse with both axes, taken as square to each other. */
		ELLIPSE("ellipse"),
		/** Straight lines from spoke to spoke: less than a smooth crown's. */
		POLYGON("polygon"),
		/** A sector of a circle for each spoke. */
		SECTORS("sectors");

		private final String code;

		Form(String code) {
			this.code = code;
		}

		public String code() {
			return this.code;
		}

	}

	/**
	 * An area by one form.
	 *
	 * @param squareFeet with its standard uncertainty
	 */
	public record Area(Form form, Estimate squareFeet) {
	}

}
