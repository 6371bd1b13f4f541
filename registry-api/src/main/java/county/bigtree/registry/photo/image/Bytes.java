package county.bigtree.registry.photo.image;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The bytes of a file, read from a place in it. To read beyond the end says that it is
 * cut off.
 */
record Bytes(byte[] file) {

	int u1(int at) {
		require(at, 1);
		return this.file[at] & 0xFF;
	}

	int u2(int at) {
		return u1(at) << 8 | u1(at + 1);
	}

	int u4(int at) {
		return u2(at) << 16 | u2(at + 2);
	}

	int u2LowFirst(int at) {
		return u1(at) | u1(at + 1) << 8;
	}

	int u3LowFirst(int at) {
		return u2LowFirst(at) | u1(at + 2) << 16;
	}

	int u4LowFirst(int at) {
		return u2LowFirst(at) | u2LowFirst(at + 2) << 16;
	}

	boolean has(int at, String text) {
		byte[] wanted = text.getBytes(StandardCharsets.ISO_8859_1);
		return at + wanted.length <= this.file.length
				&& Arrays.equals(this.file, at, at + wanted.length, wanted, 0, wanted.length);
	}

	String text(int at, int length) {
		require(at, length);
		return new String(this.file, at, length, StandardCharsets.ISO_8859_1);
	}

	byte[] part(int from, int to) {
		require(from, to - from);
		return Arrays.copyOfRange(this.file, from, to);
	}

	/** Lengths come out of the file, so that they may be negative or huge. */
	void require(int at, int length) {
		if (at < 0 || length < 0 || length > this.file.length - at) {
			throw Refusal.cutOff();
		}
	}

}
