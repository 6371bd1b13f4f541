package county.bigtree.registry.paper;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A paper as a program reads it that didn't make it.
 */
public final class Pdf implements AutoCloseable {

	private final byte[] bytes;

	private final PDDocument document;

	public Pdf(byte[] bytes) {
		this.bytes = bytes.clone();
		try {
			this.document = Loader.loadPDF(bytes);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	public int pages() {
		return this.document.getNumberOfPages();
	}

	/** Width and height of its first page in points, rounded. */
	public String size() {
		PDRectangle box = this.document.getPage(0).getMediaBox();
		return Math.round(box.getWidth()) + " x " + Math.round(box.getHeight());
	}

	public String title() {
		return this.document.getDocumentInformation().getTitle();
	}

	/** Its text with single spaces, in the order in which it stands in the file. */
	public String text() {
		return text(1, pages());
	}

	public String text(int from, int to) {
		try {
			PDFTextStripper stripper = new PDFTextStripper();
			stripper.setStartPage(from);
			stripper.setEndPage(to);
			return stripper.getText(this.document).replaceAll("\\s+", " ").strip();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/** What each link says in words. */
	public List<@Nullable String> links() {
		List<@Nullable String> links = new ArrayList<>();
		for (PDPage page : this.document.getPages()) {
			try {
				page.getAnnotations().forEach((link) -> links.add(link.getContents()));
			}
			catch (IOException ex) {
				throw new UncheckedIOException(ex);
			}
		}
		return links;
	}

	/** What each drawing and picture says in words. */
	public List<@Nullable String> pictures() {
		List<@Nullable String> pictures = new ArrayList<>();
		elements().stream()
			.filter((element) -> element.getStructureType().equals("Figure"))
			.forEach((element) -> pictures.add(element.getAlternateDescription()));
		return pictures;
	}

	/** The kinds of its parts, in reading order. */
	public List<String> structure() {
		return elements().stream().map(PDStructureElement::getStructureType).toList();
	}

	/** Titles of its bookmarks. */
	public List<String> bookmarks() {
		List<String> titles = new ArrayList<>();
		PDOutlineNode outline = this.document.getDocumentCatalog().getDocumentOutline();
		if (outline != null) {
			collect(outline, titles);
		}
		return titles;
	}

	public BufferedImage image(int page, int dotsPerInch) {
		try {
			return new PDFRenderer(this.document).renderImageWithDPI(page, dotsPerInch);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/**
	 * Wants that veraPDF finds nothing against PDF/UA-1, and what the standard (ISO
	 * 14289-1, 7.1, 7.2, 7.18.5, 7.21.4) asks of any paper and this can see: a tagged
	 * structure, a language, a title that is shown, every font embedded, every picture in
	 * words.
	 */
	public Pdf isForEveryone() {
		assertThat(UniversalAccess.faults(this.bytes)).isEmpty();
		assertThat(this.document.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
		assertThat(this.document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
		assertThat(this.document.getDocumentCatalog().getLanguage()).isEqualTo("en");
		assertThat(this.document.getDocumentCatalog().getViewerPreferences().displayDocTitle()).isTrue();
		assertThat(title()).isNotBlank();
		assertThat(structure()).contains("H1", "P");
		assertThat(fonts()).isNotEmpty().allSatisfy((name, embedded) -> assertThat(embedded).as(name).isTrue());
		assertThat(pictures()).allSatisfy((words) -> assertThat(words).isNotBlank());
		assertThat(links()).allSatisfy((words) -> assertThat(words).isNotBlank());
		return this;
	}

	/** Whether each font is embedded. */
	public Map<String, Boolean> fonts() {
		Map<String, Boolean> fonts = new LinkedHashMap<>();
		for (PDPage page : this.document.getPages()) {
			for (COSName name : page.getResources().getFontNames()) {
				try {
					PDFont font = page.getResources().getFont(name);
					fonts.put(font.getName(), font.isEmbedded());
				}
				catch (IOException ex) {
					throw new UncheckedIOException(ex);
				}
			}
		}
		return fonts;
	}

	@Override
	public void close() {
		try {
			this.document.close();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static void collect(PDOutlineNode node, List<String> titles) {
		for (PDOutlineItem item : node.children()) {
			titles.add(item.getTitle());
			collect(item, titles);
		}
	}

	private Set<PDStructureElement> elements() {
		Set<PDStructureElement> elements = new LinkedHashSet<>();
		collect(this.document.getDocumentCatalog().getStructureTreeRoot(), elements);
		return elements;
	}

	private static void collect(PDStructureNode node, Set<PDStructureElement> elements) {
		for (Object kid : node.getKids()) {
			if (kid instanceof PDStructureElement element) {
				elements.add(element);
				collect(element, elements);
			}
		}
	}

}
