package county.bigtree.registry.photo.image;

import java.io.ByteArrayOutputStream;
import java.util.Set;
import java.util.zip.CRC32;

import org.jspecify.annotations.Nullable;

/**
 * Takes a PNG file apart by its chunks (W3C Portable Network Graphics, 5.3), without
 * unpacking it. Kept are its header, palette, transparency and data: texts and profiles,
 * which are packed themselves and may unpack to anything, are not.
 */
final class PngFile {

	private static final Set<String> KEPT = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

	private static final int SIGNATURE = 8;

	private static final int HEADER = 13;

	/** Length, type and checksum. */
	private static final int FRAMING = 12;

	private final Bytes bytes;

	private final ByteArrayOutputStream kept = new ByteArrayOutputStream();

	private int width;

	private int height;

	private byte @Nullable [] exif;

	PngFile(byte[] file) {
		this.bytes = new Bytes(file);
	}

	Bare bare() {
		this.kept.writeBytes(this.bytes.part(0, SIGNATURE));
		int at = SIGNATURE;
		String type = "";
		while (!type.equals("IEND")) {
			int length = this.bytes.u4(at);
			type = this.bytes.text(at + 4, 4);
			this.bytes.require(at + 8, length);
			this.bytes.require(at + 8 + length, 4);
			chunk(type, at, length);
			at += FRAMING + length;
		}
		return new Bare(Format.PNG, this.width, this.height, this.kept.toByteArray(), this.exif);
	}

	private void chunk(String type, int at, int length) {
		boolean header = type.equals("IHDR");
		if (header != (at == SIGNATURE) || header && length != HEADER) {
			throw Refusal.damaged();
		}
		switch (type) {
			case "IHDR" -> {
				this.width = side(at + 8);
				this.height = side(at + 12);
			}
			case "acTL", "fcTL", "fdAT" -> throw Refusal.moves();
			case "eXIf" -> this.exif = this.bytes.part(at + 8, at + 8 + length);
			default -> {
			}
		}
		if (KEPT.contains(type)) {
			requireIntact(at, length);
			this.kept.write(this.bytes.file(), at, FRAMING + length);
		}
	}

	private int side(int at) {
		int side = this.bytes.u4(at);
		if (side <= 0) {
			throw Refusal.damaged();
		}
		return side;
	}

	private void requireIntact(int at, int length) {
		CRC32 checksum = new CRC32();
		checksum.update(this.bytes.file(), at + 4, 4 + length);
		if ((int) checksum.getValue() != this.bytes.u4(at + 8 + length)) {
			throw Refusal.damaged();
		}
	}

}
