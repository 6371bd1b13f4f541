package county.bigtree.registry.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.BitSet;
import java.util.List;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;

import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;

/**
 * The fonts of all papers, embedded in each as far as its text needs them: a sans and a
 * serif, behind them one with signs, Greek, Cyrillic, Hebrew and Arabic, behind that one
 * with Chinese and Japanese. They are read when a paper is made and not kept: together
 * they are 7 MB.
 */
@Component
class PaperFonts {

	private static final String SANS = "Paper Sans";

	private static final String SERIF = "Paper Serif";

	private static final String SIGNS = "Paper Signs";

	private static final String WIDE = "Paper Wide";

	private static final List<Face> OWN = List.of(new Face("NotoSans-Regular", SANS, 400, FontStyle.NORMAL),
			new Face("NotoSans-Bold", SANS, 700, FontStyle.NORMAL),
			new Face("NotoSerif-Regular", SERIF, 400, FontStyle.NORMAL),
			new Face("NotoSerif-Italic", SERIF, 400, FontStyle.ITALIC),
			new Face("NotoSerif-Bold", SERIF, 700, FontStyle.NORMAL));

	private static final Face SIGNS_FACE = new Face("DejaVuSans", SIGNS, 400, FontStyle.NORMAL);

	private static final Face WIDE_FACE = new Face("DroidSansFallbackFull", WIDE, 400, FontStyle.NORMAL);

	private volatile @Nullable Coverage coverage;

	/** Hands a paper the fonts that its letters need. */
	void use(PdfRendererBuilder builder, PDDocument document, BitSet letters) {
		Coverage covered = coverage();
		OWN.forEach((face) -> face.use(builder, document));
		BitSet further = (BitSet) letters.clone();
		further.andNot(covered.own());
		if (!further.isEmpty()) {
			SIGNS_FACE.use(builder, document);
			further.andNot(covered.signs());
		}
		if (!further.isEmpty()) {
			WIDE_FACE.use(builder, document);
		}
	}

	/** Whether any of the fonts has the letter. */
	boolean has(int letter) {
		Coverage covered = coverage();
		return covered.own().get(letter) || covered.signs().get(letter) || covered.wide().get(letter);
	}

	private Coverage coverage() {
		Coverage known = this.coverage;
		if (known == null) {
			BitSet own = OWN.get(0).letters();
			OWN.forEach((face) -> own.and(face.letters()));
			known = new Coverage(own, SIGNS_FACE.letters(), WIDE_FACE.letters());
			this.coverage = known;
		}
		return known;
	}

	/**
	 * Which letters the fonts have.
	 *
	 * @param own those that each face of the sans and the serif has
	 */
	private record Coverage(BitSet own, BitSet signs, BitSet wide) {
	}

	/**
	 * One font file.
	 *
	 * @param family its name in style sheets
	 */
	private record Face(String file, String family, int weight, FontStyle style) {

		void use(PdfRendererBuilder builder, PDDocument document) {
			builder.useFont(new Loaded(this, document), this.family, this.weight, this.style, true);
		}

		private InputStream open() {
			try {
				return new ClassPathResource("fonts/" + this.file + ".ttf").getInputStream();
			}
			catch (IOException ex) {
				throw new UncheckedIOException(ex);
			}
		}

		private BitSet letters() {
			try (InputStream stream = open();
					TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(stream))) {
				CmapLookup map = font.getUnicodeCmapLookup();
				BitSet letters = new BitSet();
				for (int letter = ' '; letter <= Character.MAX_CODE_POINT; letter++) {
					letters.set(letter, map.getGlyphId(letter) != 0);
				}
				return letters;
			}
			catch (IOException ex) {
				throw new UncheckedIOException(ex);
			}
		}

	}

	/**
	 * A font read into a document when its text first asks for it, without ligatures:
	 * they cost a third of the time, and text is found again without them.
	 */
	private static final class Loaded extends PDFontSupplier {

		private final Face face;

		private final PDDocument document;

		private @Nullable PDFont font;

		@SuppressWarnings("NullAway")
		Loaded(Face face, PDDocument document) {
			super(null);
			this.face = face;
			this.document = document;
		}

		@Override
		public PDFont supply() {
			PDFont loaded = this.font;
			if (loaded == null) {
				try (InputStream stream = this.face.open()) {
					TrueTypeFont read = new TTFParser().parse(new RandomAccessReadBuffer(stream));
					read.setEnableGsub(false);
					loaded = PDType0Font.load(this.document, read, true);
				}
				catch (IOException ex) {
					throw new UncheckedIOException(ex);
				}
				this.font = loaded;
			}
			return loaded;
		}

	}

}
