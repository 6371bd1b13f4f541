package county.bigtree.registry.photo.image;

import java.io.ByteArrayOutputStream;

import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Takes a JPEG file apart by its markers (ISO/IEC 10918-1, annex B), without unpacking
 * it. Kept are its frame, tables and scans, and of the application's segments those that
 * say what the colours mean: JFIF, Adobe and ICC. What stands after the end of the
 * picture is dropped: phones put films and previews there.
 */
final class JpegFile {

	/** Each goes over all of the picture again; encoders make about ten. */
	private static final int MOST_SCANS = 32;

	private static final int START = 0xD8;

	private static final int END = 0xD9;

	private static final int SCAN = 0xDA;

	private static final int APP0 = 0xE0;

	private static final int APP1 = 0xE1;

	private static final int APP2 = 0xE2;

	private static final int APP14 = 0xEE;

	private static final String EXIF = "Exif\0\0";

	private final Bytes bytes;

	private final ByteArrayOutputStream kept = new ByteArrayOutputStream();

	private int width;

	private int height;

	private int scans;

	private byte @Nullable [] exif;

	JpegFile(byte[] file) {
		this.bytes = new Bytes(file);
	}

	Bare bare() {
		keepMarker(START);
		int at = 2;
		while (true) {
			at = marker(at);
			int marker = this.bytes.u1(at);
			if (marker == END) {
				break;
			}
			at = isAlone(marker) ? at + 1 : segment(marker, at + 1);
		}
		keepMarker(END);
		if (this.scans == 0) {
			throw Refusal.damaged();
		}
		return new Bare(Format.JPEG, this.width, this.height, this.kept.toByteArray(), this.exif);
	}

	/** The place of the next marker's code, behind any number of fill bytes. */
	private int marker(int from) {
		if (this.bytes.u1(from) != 0xFF) {
			throw Refusal.damaged();
		}
		int at = from;
		while (this.bytes.u1(at) == 0xFF) {
			at++;
		}
		return at;
	}

	private static boolean isAlone(int marker) {
		return marker == 0x01 || isRestart(marker);
	}

	private static boolean isRestart(int marker) {
		return marker >= 0xD0 && marker <= 0xD7;
	}

	/** Reads the segment whose length stands there, and answers where the next begins. */
	private int segment(int marker, int at) {
		int end = at + this.bytes.u2(at);
		this.bytes.require(at, end - at);
		if (marker == START || end < at + 2) {
			throw Refusal.damaged();
		}
		if (marker == APP1 && this.exif == null && this.bytes.has(at + 2, EXIF)) {
			this.exif = this.bytes.part(Math.min(end, at + 2 + EXIF.length()), end);
		}
		if (isFrame(marker)) {
			frame(marker, at);
		}
		if (!isKept(marker, at)) {
			return end;
		}
		keepMarker(marker);
		this.kept.write(this.bytes.file(), at, end - at);
		return (marker == SCAN) ? scan(end) : end;
	}

	private static boolean isFrame(int marker) {
		return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
	}

	/** Baseline, extended and progressive, by Huffman codes: what cameras make. */
	private void frame(int marker, int at) {
		if (marker > 0xC2) {
			throw wrongKind();
		}
		if (this.width > 0 || this.bytes.u2(at) < 8) {
			throw Refusal.damaged();
		}
		int components = this.bytes.u1(at + 7);
		if (this.bytes.u1(at + 2) != 8 || components != 1 && components != 3) {
			throw wrongKind();
		}
		this.height = this.bytes.u2(at + 3);
		this.width = this.bytes.u2(at + 5);
		if (this.width == 0 || this.height == 0) {
			throw Refusal.damaged();
		}
	}

	private boolean isKept(int marker, int at) {
		return switch (marker) {
			case 0xC4, 0xDB, 0xDD, SCAN -> true;
			case APP0 -> this.bytes.has(at + 2, "JFIF\0");
			case APP2 -> this.bytes.has(at + 2, "ICC_PROFILE\0");
			case APP14 -> this.bytes.has(at + 2, "Adobe");
			default -> isFrame(marker);
		};
	}

	/** Keeps what is coded, and answers where the next marker begins. */
	private int scan(int from) {
		this.scans++;
		if (this.scans > MOST_SCANS || this.width == 0) {
			throw Refusal.damaged();
		}
		int at = from;
		while (!(this.bytes.u1(at) == 0xFF && endsScan(this.bytes.u1(at + 1)))) {
			at++;
		}
		this.kept.write(this.bytes.file(), from, at - from);
		return at;
	}

	private static boolean endsScan(int afterFf) {
		return afterFf != 0 && afterFf != 0xFF && !isRestart(afterFf);
	}

	private void keepMarker(int marker) {
		this.kept.write(0xFF);
		this.kept.write(marker);
	}

	private static Problem wrongKind() {
		return Refusal.of("unusual-jpeg", "must be a JPEG of the usual kind, in RGB or grey: save it again");
	}

}
