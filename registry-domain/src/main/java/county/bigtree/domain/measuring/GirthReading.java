package county.bigtree.domain.measuring;

/**
 * A reading of the girth, in inches once reduced.
 */
public sealed interface GirthReading extends Reading
		permits TapeGirth, HalfGirth, TaperGirth, StemsGirth, StringGirth, DiameterGirth, BiltmoreGirth {

	GirthNotes notes();

}
