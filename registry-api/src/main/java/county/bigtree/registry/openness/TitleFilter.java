package county.bigtree.registry.openness;

import org.jspecify.annotations.Nullable;

/**
 * Which titles are asked for. Null asks for any. Neither a tag nor a box finds a title
 * whose tree is not listed.
 *
 * @param held some of it must lie within the time of the title
 */
public record TitleFilter(@Nullable String county, @Nullable String species, @Nullable String tag,
		@Nullable String title, @Nullable Box box, Interval held) {
}
