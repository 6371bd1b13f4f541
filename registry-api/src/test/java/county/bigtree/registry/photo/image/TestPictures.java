package county.bigtree.registry.photo.image;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

import javax.imageio.ImageIO;

/**
 * Makes picture files for tests, good and hostile ones: written byte by byte as the
 * standards say, where no encoder would make them.
 */
public final class TestPictures {

	private static final byte[] PNG_SIGNATURE = { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n' };

	/**
	 * A key frame of 120 by 100 pixels, blue but for its yellow upper left quarter, as a
	 * browser packs it.
	 */
	private static final String LOSSY = "cAgAnQEqeABkAD7RaK5RKCakIqSd+AEAGglnbt1e44AW/+AiPLvzMhHOObNQ1FRi0udaZBYcoQxXA7vJYrf3ia+9LO"
			+ "T8OcjEiTpGAAD+21n//hWv2B/Etrf7pP1P6ypsPmMlv+TPho4NHT/pqcGj8rUQ1uf0Mqrjsw0cp+Jk7VDEDj+cr2uK"
			+ "Q6MCQ4pii//lJa67f/5SWzT1va84yi6UB+j9ZsEFmqK/rXeGCHCTiO96mh5CLeAsGgAAAAA=";

	private TestPictures() {
	}

	/** Red, green, blue and white by quarters, from the upper left as one reads. */
	public static BufferedImage quarters(int width, int height) {
		BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
		Graphics2D graphics = image.createGraphics();
		Color[] colours = { Color.RED, Color.GREEN, Color.BLUE, Color.WHITE };
		for (int quarter = 0; quarter < 4; quarter++) {
			graphics.setColor(colours[quarter]);
			graphics.fillRect(quarter % 2 * (width / 2), quarter / 2 * (height / 2), width - width / 2,
					height - height / 2);
		}
		graphics.dispose();
		return image;
	}

	public static byte[] jpeg(int width, int height) {
		return written(quarters(width, height), "jpeg");
	}

	public static byte[] written(BufferedImage image, String format) {
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		try {
			if (!ImageIO.write(image, format, out)) {
				throw new IllegalStateException("No writer of " + format);
			}
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return out.toByteArray();
	}

	/** The JPEG with the segment behind its first marker. */
	public static byte[] withSegment(byte[] jpeg, int marker, byte[] content) {
		return ByteBuffer.allocate(jpeg.length + 4 + content.length)
			.put(jpeg, 0, 2)
			.put((byte) 0xFF)
			.put((byte) marker)
			.putShort((short) (content.length + 2))
			.put(content)
			.put(jpeg, 2, jpeg.length - 2)
			.array();
	}

	/** The JPEG as a camera writes it: how it was held, where, and a text. */
	public static byte[] withExif(byte[] jpeg, int orientation, String text) {
		byte[] exif = exif(orientation, text);
		return withSegment(jpeg, 0xE1,
				ByteBuffer.allocate(6 + exif.length)
					.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII))
					.put(exif)
					.array());
	}

	/** TIFF 6.0: a first directory, and one of the place: 41 degrees north, 87 west. */
	public static byte[] exif(int orientation, String text) {
		byte[] words = (text + "\0").getBytes(StandardCharsets.US_ASCII);
		int gps = 8 + 2 + 3 * 12 + 4;
		int degrees = gps + 2 + 4 * 12 + 4;
		ByteBuffer out = ByteBuffer.allocate(degrees + 48 + words.length).order(ByteOrder.LITTLE_ENDIAN);
		out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(8).putShort((short) 3);
		entry(out, 0x010E, 2, words.length, degrees + 48);
		entry(out, 0x0112, 3, 1, orientation);
		entry(out, 0x8825, 4, 1, gps);
		out.putInt(0).putShort((short) 4);
		entry(out, 1, 2, 2, 'N');
		entry(out, 2, 5, 3, degrees);
		entry(out, 3, 2, 2, 'W');
		entry(out, 4, 5, 3, degrees + 24);
		out.putInt(0);
		for (int degree : new int[] { 41, 87 }) {
			out.putInt(degree).putInt(1).putInt(0).putInt(1).putInt(0).putInt(1);
		}
		return out.put(words).array();
	}

	private static void entry(ByteBuffer out, int tag, int type, int count, int value) {
		out.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
	}

	/** A PNG that says it is so large, with so many bytes of zeroes packed in it. */
	public static byte[] png(int width, int height, int unpacked, byte[]... before) {
		ByteBuffer header = ByteBuffer.allocate(13).putInt(width).putInt(height).put(new byte[] { 8, 2, 0, 0, 0 });
		return joined(PNG_SIGNATURE, pngChunk("IHDR", header.array()), joined(before),
				pngChunk("IDAT", packed(new byte[unpacked])), pngChunk("IEND", new byte[0]));
	}

	public static byte[] pngChunk(String type, byte[] data) {
		byte[] named = joined(type.getBytes(StandardCharsets.US_ASCII), data);
		CRC32 checksum = new CRC32();
		checksum.update(named);
		return ByteBuffer.allocate(12 + data.length)
			.putInt(data.length)
			.put(named)
			.putInt((int) checksum.getValue())
			.array();
	}

	public static byte[] packed(byte[] bytes) {
		Deflater deflater = new Deflater(9);
		deflater.setInput(bytes);
		deflater.finish();
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		byte[] buffer = new byte[8192];
		while (!deflater.finished()) {
			out.write(buffer, 0, deflater.deflate(buffer));
		}
		deflater.end();
		return out.toByteArray();
	}

	public static byte[] webp(byte[]... chunks) {
		byte[] all = joined(chunks);
		return ByteBuffer.allocate(12 + all.length)
			.order(ByteOrder.LITTLE_ENDIAN)
			.put("RIFF".getBytes(StandardCharsets.US_ASCII))
			.putInt(4 + all.length)
			.put("WEBP".getBytes(StandardCharsets.US_ASCII))
			.put(all)
			.array();
	}

	public static byte[] webpChunk(String type, byte[] data) {
		return ByteBuffer.allocate(8 + data.length + data.length % 2)
			.order(ByteOrder.LITTLE_ENDIAN)
			.put(type.getBytes(StandardCharsets.US_ASCII))
			.putInt(data.length)
			.put(data)
			.array();
	}

	public static byte[] lossyWebp() {
		return webpChunk("VP8 ", Base64.getDecoder().decode(LOSSY));
	}

	/**
	 * One colour, without loss: a dozen bytes for any size (RFC 9649, 3.7: codes of one
	 * symbol take no bits).
	 */
	public static byte[] losslessWebp(int width, int height) {
		Bits bits = new Bits();
		bits.put(0x2F, 8).put(width - 1, 14).put(height - 1, 14).put(0, 1).put(0, 3);
		bits.put(0, 3);
		bits.code(0x80).code(0x40).code(0x20).code(0xFF).put(1, 1).put(0, 1).put(0, 1).put(0, 1);
		return webpChunk("VP8L", bits.bytes());
	}

	public static byte[] joined(byte[]... parts) {
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		for (byte[] part : parts) {
			out.writeBytes(part);
		}
		return out.toByteArray();
	}

	/** The lowest bit first. */
	private static final class Bits {

		private final byte[] bytes = new byte[64];

		private int count;

		Bits put(int value, int width) {
			for (int bit = 0; bit < width; bit++, this.count++) {
				this.bytes[this.count / 8] |= (byte) ((value >> bit & 1) << this.count % 8);
			}
			return this;
		}

		/** A simple code of one symbol of eight bits. */
		Bits code(int symbol) {
			return put(1, 1).put(0, 1).put(1, 1).put(symbol, 8);
		}

		byte[] bytes() {
			return Arrays.copyOf(this.bytes, this.count / 8 + 4);
		}

	}

}
