package county.bigtree.domain.quantity;

/**
 * Taped along sloping ground and laid level: L cos g.
 *
 * @param along the slope, more than zero, neither repeated nor sloped itself
 * @param slope of the ground from the level, up or down
 */
public record SlopedLength(Length along, Angle slope) implements Length {

	public SlopedLength {
		if (along instanceof SlopedLength || along instanceof RepeatedLength) {
			throw new InvalidReadingException("along", Flaw.CONTRADICTION,
					"must not be repeated or along a slope itself");
		}
		along.positive("along");
	}

	@Override
	public double in(LengthUnit wanted) {
		return this.along.in(wanted) * Math.cos(this.slope.radians());
	}

	@Override
	public Estimate estimate(LengthUnit wanted, DefaultUncertainty byDefault) {
		Estimate taped = this.along.estimate(wanted, byDefault);
		Estimate g = this.slope.estimateRadians(Angle.USUAL_DEGREES, Angle.USUAL_PERCENT);
		double byLength = Math.cos(g.value()) * taped.standardUncertainty();
		double bySlope = taped.value() * Math.sin(g.value()) * g.standardUncertainty();
		return new Estimate(in(wanted), Math.hypot(byLength, bySlope));
	}

	@Override
	public boolean statesUncertainty() {
		return this.along.statesUncertainty() && this.slope.statesUncertainty();
	}

	@Override
	public String text() {
		return "(" + this.along.text() + ") × cos(" + this.slope.text() + ")";
	}

}
