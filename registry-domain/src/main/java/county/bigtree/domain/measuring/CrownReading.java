package county.bigtree.domain.measuring;

/**
 * A reading of the mean crown spread, in feet once reduced. The edge of the crown is the
 * plumb line of its outermost live foliage.
 */
public sealed interface CrownReading extends Reading permits CrownAxes, CrownSpokes, StatedSpread {

	Notes notes();

}
