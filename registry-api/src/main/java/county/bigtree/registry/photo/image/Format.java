package county.bigtree.registry.photo.image;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/**
 * The kinds of files that are taken, told by how they begin and never by their name. A
 * WebP picture is unpacked whole before it is made smaller, the others in strips: hence
 * fewer pixels.
 */
enum Format {

	/** ISO/IEC 10918-1. */
	JPEG(40_000_000, 0, new byte[] { (byte) 0xFF, (byte) 0xD8, (byte) 0xFF }),

	/** W3C Portable Network Graphics, 5.2. */
	PNG(40_000_000, 0, new byte[] { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n' }),

	/** RFC 9649, 2.4. */
	WEBP(20_000_000, 8, "WEBP".getBytes(StandardCharsets.US_ASCII));

	private final int mostPixels;

	private final int signatureAt;

	private final byte[] signature;

	Format(int mostPixels, int signatureAt, byte[] signature) {
		this.mostPixels = mostPixels;
		this.signatureAt = signatureAt;
		this.signature = signature;
	}

	static Optional<Format> of(byte[] file) {
		return Arrays.stream(values()).filter((format) -> format.begins(file)).findFirst();
	}

	int mostPixels() {
		return this.mostPixels;
	}

	private boolean begins(byte[] file) {
		int end = this.signatureAt + this.signature.length;
		return file.length >= end
				&& Arrays.equals(file, this.signatureAt, end, this.signature, 0, this.signature.length);
	}

}
