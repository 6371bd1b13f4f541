package county.bigtree.registry.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.IdentityHashMap;
import java.util.Map;

import com.openhtmltopdf.bidi.support.ICUBidiReorderer;
import com.openhtmltopdf.bidi.support.ICUBidiSplitter;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer.SvgExternalResourceMode;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer.SvgScriptMode;
import com.openhtmltopdf.util.XRLog;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionGoTo;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.jspecify.annotations.Nullable;

import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;

/**
 * Sets a text on pages as tagged PDF (ISO 32000-1, 14.8; PDF/UA-1, ISO 14289-1). The same
 * text gives the same bytes: no hour of making stands in them. Nothing is fetched from
 * anywhere.
 */
@Component
class SetInType {

	private static final float PDF_VERSION = 1.7f;

	private final PaperFonts fonts;

	private final String style = read("paper/paper.css");

	private final String drawingStyle = read("paper/drawing.css");

	SetInType(PaperFonts fonts) {
		this.fonts = fonts;
		XRLog.setLoggingEnabled(false);
		FontMappers.set(new OwnFontsOnly());
	}

	/** Pages of that size. */
	byte[] set(String html, PaperSize size) {
		PaperText text = PaperText.of(html, "@page { size: " + size.word() + "; }\n" + this.style, this.drawingStyle,
				this.fonts);
		try (PDDocument document = new PDDocument(); PdfBoxRenderer renderer = renderer(text, document)) {
			renderer.layout();
			renderer.createPDFWithoutClosing();
			tellWhereLinksLead(document);
			document.setDocumentId((long) html.hashCode());
			document.getDocumentInformation().setCreationDate(null);
			ByteArrayOutputStream bytes = new ByteArrayOutputStream();
			document.save(bytes);
			return bytes.toByteArray();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/**
	 * In words for who can't see it: the paper's title and the page (PDF/UA-1, 7.18.5).
	 */
	private static void tellWhereLinksLead(PDDocument document) throws IOException {
		Map<COSBase, Integer> numbers = new IdentityHashMap<>();
		document.getPages().forEach((page) -> numbers.put(page.getCOSObject(), numbers.size() + 1));
		for (PDPage page : document.getPages()) {
			for (PDAnnotation annotation : page.getAnnotations()) {
				if (annotation instanceof PDAnnotationLink link && destination(link) instanceof PDPageDestination to
						&& to.getPage() != null) {
					link.setContents("%s, %d".formatted(document.getDocumentInformation().getTitle(),
							numbers.get(to.getPage().getCOSObject())));
				}
			}
		}
	}

	private static @Nullable PDDestination destination(PDAnnotationLink link) throws IOException {
		return (link.getAction() instanceof PDActionGoTo action) ? action.getDestination() : link.getDestination();
	}

	private PdfBoxRenderer renderer(PaperText text, PDDocument document) {
		PdfRendererBuilder builder = new PdfRendererBuilder();
		builder.useFastMode();
		builder.usePdfVersion(PDF_VERSION);
		builder.usePdfUaAccessibility(true);
		builder.useUnicodeBidiSplitter(new ICUBidiSplitter.ICUBidiSplitterFactory());
		builder.useUnicodeBidiReorderer(new ICUBidiReorderer());
		builder.useSVGDrawer(new BatikSVGDrawer(SvgScriptMode.SECURE, SvgExternalResourceMode.SECURE));
		builder.useExternalResourceAccessControl((address, type) -> false,
				com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
		builder.usePDDocument(document);
		this.fonts.use(builder, document, text.letters());
		builder.withProducer("openhtmltopdf");
		builder.withW3cDocument(text.document(), "");
		builder.toStream(OutputStream.nullOutputStream());
		return builder.buildPdfRenderer();
	}

	private static String read(String resource) {
		try {
			return new ClassPathResource(resource).getContentAsString(StandardCharsets.UTF_8);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
