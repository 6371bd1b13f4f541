package county.bigtree.registry.photo.image;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

import org.jspecify.annotations.Nullable;

/**
 * Takes a WebP file apart by its chunks (RFC 9649, 2.3), without unpacking it. Kept is
 * the one chunk with the picture, so that its size can't be told otherwise than by that
 * chunk itself.
 */
final class WebpFile {

	private static final int FIRST_CHUNK = 12;

	private static final int MOVES = 0x02;

	private final Bytes bytes;

	private byte @Nullable [] picture;

	private int width;

	private int height;

	private byte @Nullable [] exif;

	WebpFile(byte[] file) {
		this.bytes = new Bytes(file);
	}

	Bare bare() {
		int said = this.bytes.u4LowFirst(4);
		if (!this.bytes.has(0, "RIFF")) {
			throw Refusal.damaged();
		}
		this.bytes.require(8, said);
		int at = FIRST_CHUNK;
		while (at + 8 <= 8 + said) {
			int length = this.bytes.u4LowFirst(at + 4);
			this.bytes.require(at + 8, length);
			chunk(this.bytes.text(at, 4), at, length);
			at += 8 + length + length % 2;
		}
		if (this.picture == null) {
			throw Refusal.damaged();
		}
		return new Bare(Format.WEBP, this.width, this.height, alone(this.picture), this.exif);
	}

	private void chunk(String type, int at, int length) {
		int data = at + 8;
		switch (type) {
			case "VP8X" -> {
				if ((this.bytes.u1(data) & MOVES) != 0) {
					throw Refusal.moves();
				}
			}
			case "ANIM", "ANMF" -> throw Refusal.moves();
			case "EXIF" -> this.exif = tiff(data, length);
			case "VP8 " -> lossy(at, data, length);
			case "VP8L" -> lossless(at, data, length);
			default -> {
			}
		}
	}

	/** Some writers put before it what stands there in a JPEG. */
	private byte[] tiff(int data, int length) {
		int skipped = this.bytes.has(data, "Exif\0\0") ? 6 : 0;
		return this.bytes.part(Math.min(data + skipped, data + length), data + length);
	}

	/** The header of a key frame: RFC 6386, 9.1. */
	private void lossy(int at, int data, int length) {
		if ((this.bytes.u1(data) & 1) != 0 || !this.bytes.has(data + 3, "\u009d\u0001\u002a")) {
			throw Refusal.damaged();
		}
		keep(at, length, this.bytes.u2LowFirst(data + 6) & 0x3FFF, this.bytes.u2LowFirst(data + 8) & 0x3FFF);
	}

	/** RFC 9649, 3.4. */
	private void lossless(int at, int data, int length) {
		if (this.bytes.u1(data) != 0x2F) {
			throw Refusal.damaged();
		}
		int sides = this.bytes.u4LowFirst(data + 1);
		keep(at, length, (sides & 0x3FFF) + 1, (sides >>> 14 & 0x3FFF) + 1);
	}

	private void keep(int at, int length, int wide, int high) {
		if (this.picture != null) {
			throw Refusal.moves();
		}
		if (wide == 0 || high == 0) {
			throw Refusal.damaged();
		}
		this.picture = this.bytes.part(at, at + 8 + length);
		this.width = wide;
		this.height = high;
	}

	private static byte[] alone(byte[] chunk) {
		int padded = chunk.length + chunk.length % 2;
		return ByteBuffer.allocate(FIRST_CHUNK + padded)
			.order(ByteOrder.LITTLE_ENDIAN)
			.put("RIFF".getBytes(StandardCharsets.US_ASCII))
			.putInt(4 + padded)
			.put("WEBP".getBytes(StandardCharsets.US_ASCII))
			.put(chunk)
			.array();
	}

}
