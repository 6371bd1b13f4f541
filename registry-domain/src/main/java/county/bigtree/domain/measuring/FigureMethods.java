package county.bigtree.domain.measuring;

import org.jspecify.annotations.Nullable;

/**
 * The methods by which the figures of a visit, or of a score, were taken; null where a
 * figure is lacking or nobody told.
 */
public record FigureMethods(@Nullable Method girth, @Nullable Method height, @Nullable Method crown) {

	/** Nobody told. */
	public static final FigureMethods UNTOLD = new FigureMethods(null, null, null);

	public FigureMethods {
		require("girth", girth, Kind.GIRTH);
		require("height", height, Kind.HEIGHT);
		require("crown", crown, Kind.CROWN);
	}

	public @Nullable Method of(Kind kind) {
		return switch (kind) {
			case GIRTH -> this.girth;
			case HEIGHT -> this.height;
			case CROWN -> this.crown;
		};
	}

	private static void require(String name, @Nullable Method method, Kind kind) {
		if (method != null && method.kind() != kind) {
			throw new IllegalArgumentException(
					name + " must be taken by a method for a " + name + ", was " + method.code());
		}
	}

}
