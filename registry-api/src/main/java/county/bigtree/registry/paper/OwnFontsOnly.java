package county.bigtree.registry.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.jspecify.annotations.Nullable;

import org.springframework.core.io.ClassPathResource;

/**
 * Gives the library of papers one of our own fonts where it looks for a font of the
 * machine: papers come out the same everywhere, and no list of the machine's fonts is
 * written to its disk.
 */
final class OwnFontsOnly implements FontMapper {

	private @Nullable TrueTypeFont font;

	@Override
	public FontMapping<TrueTypeFont> getTrueTypeFont(String name, @Nullable PDFontDescriptor descriptor) {
		return new FontMapping<>(font(), true);
	}

	@Override
	public FontMapping<FontBoxFont> getFontBoxFont(String name, @Nullable PDFontDescriptor descriptor) {
		return new FontMapping<>(font(), true);
	}

	@Override
	public CIDFontMapping getCIDFont(String name, @Nullable PDFontDescriptor descriptor,
			@Nullable PDCIDSystemInfo system) {
		return new CIDFontMapping(null, font(), true);
	}

	private synchronized TrueTypeFont font() {
		TrueTypeFont known = this.font;
		if (known == null) {
			try (InputStream stream = new ClassPathResource("fonts/NotoSans-Regular.ttf").getInputStream()) {
				known = new TTFParser().parse(new RandomAccessReadBuffer(stream));
			}
			catch (IOException ex) {
				throw new UncheckedIOException(ex);
			}
			this.font = known;
		}
		return known;
	}

}
