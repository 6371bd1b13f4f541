package county.bigtree.registry.photo.image;

import org.jspecify.annotations.Nullable;

/**
 * A file without all that is not needed to see its picture, and what it says of that
 * picture before anything is unpacked.
 *
 * @param width in pixels as stored, before it is turned upright
 * @param height likewise
 * @param file what is left of the file
 * @param exif what the camera noted, from the byte order on, or null
 */
record Bare(Format format, int width, int height, byte[] file, byte @Nullable [] exif) {

	/** Below it nothing of a tree can be made out. */
	static final int LEAST_SIDE = 100;

	static final int MOST_OBLONG = 20;

	/**
	 * Takes a file apart.
	 * @throws county.bigtree.registry.problem.Problem of being invalid, with the reason,
	 * where it is not to be unpacked
	 */
	static Bare of(byte[] file) {
		Format format = Format.of(file)
			.orElseThrow(() -> Refusal.of("not-a-photo", "must be a JPEG, PNG or WebP file, whatever its name"));
		Bare bare = switch (format) {
			case JPEG -> new JpegFile(file).bare();
			case PNG -> new PngFile(file).bare();
			case WEBP -> new WebpFile(file).bare();
		};
		bare.requireFitting();
		return bare;
	}

	int longest() {
		return Math.max(this.width, this.height);
	}

	private void requireFitting() {
		int shortest = Math.min(this.width, this.height);
		if (shortest < LEAST_SIDE) {
			throw Refusal.of("too-small", "must be at least %d pixels wide and high, but is %d by %d"
				.formatted(LEAST_SIDE, this.width, this.height));
		}
		if ((long) this.width * this.height > this.format.mostPixels()) {
			throw Refusal.of("too-many-pixels", "must have at most %d million pixels, but is %d by %d"
				.formatted(this.format.mostPixels() / 1_000_000, this.width, this.height));
		}
		if (longest() / shortest >= MOST_OBLONG) {
			throw Refusal.of("too-oblong", "must not be %d times as long as wide, but is %d by %d"
				.formatted(MOST_OBLONG, this.width, this.height));
		}
	}

}
