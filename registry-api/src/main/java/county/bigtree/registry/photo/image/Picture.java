package county.bigtree.registry.photo.image;

/**
 * A picture as it is kept and given out: a JPEG file without a word beside it.
 *
 * @param width in pixels
 * @param height in pixels
 */
@SuppressWarnings("ArrayRecordComponent")
public record Picture(int width, int height, byte[] jpeg) {
}
