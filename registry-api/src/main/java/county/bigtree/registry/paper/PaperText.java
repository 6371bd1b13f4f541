package county.bigtree.registry.paper;

import java.io.StringReader;
import java.text.Normalizer;
import java.util.BitSet;
import java.util.Objects;

import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;

import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * A filled template, made ready to be set: its letters are known and each can be printed,
 * its drawings carry their style and say in words what they show.
 *
 * @param letters all that stand in it
 * @param complete whether none had to be left out
 */
record PaperText(Document document, BitSet letters, boolean complete) {

	/** Stands for letters that no font has. */
	static final int LACKING = '\uFFFD';

	private static final String SVG = "http://www.w3.org/2000/svg";

	/** An element that is shown only where letters had to be left out. */
	private static final String NOTICE = "lacking";

	static PaperText of(String html, String style, String drawingStyle, PaperFonts fonts) {
		Document document = parse(html.replace("<svg ", "<svg xmlns=\"" + SVG + "\" "));
		Letters letters = new Letters(fonts);
		letters.printable(document.getDocumentElement());
		addStyle(document, style);
		draw(document, drawingStyle);
		notice(document, letters.complete);
		return new PaperText(document, letters.all, letters.complete);
	}

	private static Document parse(String html) {
		try {
			DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
			factory.setNamespaceAware(true);
			factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
			factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
			return factory.newDocumentBuilder().parse(new InputSource(new StringReader(allowed(html))));
		}
		catch (Exception ex) {
			throw new IllegalStateException("the template of a paper is not well-formed", ex);
		}
	}

	/** Without what XML 1.0 can't hold. */
	private static String allowed(String html) {
		StringBuilder text = new StringBuilder(html.length());
		html.codePoints()
			.filter((letter) -> letter >= ' ' && letter < 0xD800 || letter == '\n' || letter == '\t'
					|| letter >= 0xE000 && letter < 0xFFFE || letter > 0xFFFF)
			.forEach(text::appendCodePoint);
		return text.toString();
	}

	private static void addStyle(Document document, String style) {
		Element head = (Element) document.getElementsByTagName("head").item(0);
		Element element = document.createElement("style");
		element.setTextContent(style);
		head.appendChild(element);
	}

	private static void draw(Document document, String style) {
		NodeList drawings = document.getElementsByTagNameNS(SVG, "svg");
		for (int i = 0; i < drawings.getLength(); i++) {
			Element drawing = (Element) drawings.item(i);
			if (!drawing.hasAttribute("alt")) {
				drawing.setAttribute("alt", told(drawing));
			}
			Element element = document.createElementNS(SVG, "style");
			element.setTextContent(style);
			drawing.insertBefore(element, drawing.getFirstChild());
		}
	}

	private static String told(Element drawing) {
		NodeList told = drawing.getElementsByTagNameNS(SVG, "desc");
		NodeList named = drawing.getElementsByTagNameNS(SVG, "title");
		Node words = (told.getLength() > 0) ? told.item(0) : named.item(0);
		return Objects.requireNonNull(words, "a drawing says nothing").getTextContent().strip();
	}

	private static void notice(Document document, boolean complete) {
		NodeList all = document.getElementsByTagName("p");
		for (int i = all.getLength() - 1; i >= 0; i--) {
			Element element = (Element) all.item(i);
			if (complete && element.getAttribute("class").equals(NOTICE)) {
				element.getParentNode().removeChild(element);
			}
		}
	}

	/** Collects the letters and replaces those that can't be printed. */
	private static final class Letters {

		private final PaperFonts fonts;

		private final BitSet all = new BitSet();

		private boolean complete = true;

		Letters(PaperFonts fonts) {
			this.fonts = fonts;
		}

		void printable(Node node) {
			if (node.getNodeType() == Node.TEXT_NODE) {
				String text = node.getNodeValue();
				String printable = printable(text);
				if (!printable.equals(text)) {
					node.setNodeValue(printable);
				}
				return;
			}
			for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
				printable(child);
			}
		}

		private String printable(String text) {
			StringBuilder printable = new StringBuilder(text.length());
			int[] before = { 0 };
			Normalizer.normalize(text, Normalizer.Form.NFC)
				.codePoints()
				.filter((letter) -> !steers(letter))
				.forEach((letter) -> {
					int shown = (letter < ' ' || this.fonts.has(letter)) ? letter : LACKING;
					this.complete &= shown == letter;
					if (shown != LACKING || before[0] != LACKING) {
						printable.appendCodePoint(shown);
						this.all.set(shown);
					}
					before[0] = shown;
				});
			return printable.toString();
		}

		/**
		 * Letters without a look of their own that turn or join what stands about them.
		 */
		private static boolean steers(int letter) {
			return letter >= 0x200B && letter <= 0x200F || letter >= 0x202A && letter <= 0x202E
					|| letter >= 0x2060 && letter <= 0x206F || letter == 0xFEFF || letter >= 0xFE00 && letter <= 0xFE0F
					|| letter >= 0x7F && letter < 0xA0;
		}

	}

}
