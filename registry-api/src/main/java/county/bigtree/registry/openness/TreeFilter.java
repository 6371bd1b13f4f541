package county.bigtree.registry.openness;

import org.jspecify.annotations.Nullable;

/**
 * Which trees are asked for. Null asks for any.
 *
 * @param box where they are shown to stand: those of which only the county is shown stand
 * in none
 * @param title the title they hold
 * @param measured when they were measured for the score they have
 */
public record TreeFilter(@Nullable String county, @Nullable String species, @Nullable String tag,
		@Nullable String title, @Nullable String condition, @Nullable Box box, Interval measured) {

	/** All of a county. */
	static TreeFilter of(String county) {
		return new TreeFilter(county, null, null, null, null, null, Interval.ALL);
	}

}
