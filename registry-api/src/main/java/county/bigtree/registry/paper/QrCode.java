package county.bigtree.registry.paper;

import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/**
 * A QR code (ISO/IEC 18004) as a drawing: its dark modules as one SVG path, four light
 * ones around it. A quarter of it may be soiled and it is still read.
 *
 * @param text what it says
 * @param size of the drawing in modules, with its margin
 * @param path the dark modules
 */
public record QrCode(String text, int size, String path) {

	private static final int MARGIN = 4;

	public static QrCode of(String text) {
		ByteMatrix modules = modules(text);
		StringBuilder path = new StringBuilder();
		for (int y = 0; y < modules.getHeight(); y++) {
			for (int x = 0; x < modules.getWidth(); x++) {
				int from = x;
				while (x < modules.getWidth() && modules.get(x, y) == 1) {
					x++;
				}
				if (x > from) {
					path.append('M')
						.append(from + MARGIN)
						.append(' ')
						.append(y + MARGIN)
						.append('h')
						.append(x - from)
						.append("v1h")
						.append(from - x)
						.append('z');
				}
			}
		}
		return new QrCode(text, modules.getWidth() + 2 * MARGIN, path.toString());
	}

	private static ByteMatrix modules(String text) {
		try {
			return Encoder.encode(text, ErrorCorrectionLevel.Q).getMatrix();
		}
		catch (WriterException ex) {
			throw new IllegalArgumentException("too long for a QR code: " + text.length() + " letters", ex);
		}
	}

}
