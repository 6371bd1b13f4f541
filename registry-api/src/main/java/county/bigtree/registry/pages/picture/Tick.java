package county.bigtree.registry.pages.picture;

/**
 * A mark of an axis.
 *
 * @param at where it lies in the picture
 */
public record Tick(double at, String label) {
}
