package county.bigtree.domain.measuring;

/**
 * A reading of the total height, in feet once reduced: the vertical distance from the
 * ground at the stem to the level of the highest living point.
 */
public sealed interface HeightReading extends Reading permits PoleHeight, ShadowHeight, StickHeight, EqualArmHeight,
		TangentHeight, SineHeight, TwoStationHeight, StatedHeight {

	Notes notes();

}
