package county.bigtree.registry.paper;

import java.awt.image.BufferedImage;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Codes, read again from the paper.
 */
public class QrCodeTest {

	@Test
	void leadsWhereItSays() throws Exception {
		QrCode code = QrCode.of("https://trees.example.org/t/LM-0042");
		byte[] paper = new SetInType(new PaperFonts())
			.set("""
					<html lang="en"><head><title>T</title></head><body><h1>T</h1><svg class="qr" alt="a code" viewBox="0 0 %1$d %1$d"><path d="%2$s"/></svg></body></html>"""
				.formatted(code.size(), code.path()), PaperSize.LETTER);
		try (Pdf pdf = new Pdf(paper)) {
			assertThat(read(pdf.image(0, 150))).isEqualTo("https://trees.example.org/t/LM-0042");
		}
	}

	/** What a phone would read on a page. */
	public static String read(BufferedImage page) throws Exception {
		int[] dots = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
		return new QRCodeReader()
			.decode(new BinaryBitmap(
					new HybridBinarizer(new RGBLuminanceSource(page.getWidth(), page.getHeight(), dots))))
			.getText();
	}

}
