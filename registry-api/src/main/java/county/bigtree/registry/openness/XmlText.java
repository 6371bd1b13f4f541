package county.bigtree.registry.openness;

import java.io.Writer;

import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

import org.jspecify.annotations.Nullable;

/**
 * XML written element by element, in UTF-8.
 */
public final class XmlText {

	private final XMLStreamWriter xml;

	private XmlText(XMLStreamWriter xml) {
		this.xml = xml;
	}

	/** Writes a document. */
	public static void write(Writer to, Body body) {
		try {
			XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(to);
			xml.writeStartDocument("UTF-8", "1.0");
			body.write(new XmlText(xml));
			xml.writeEndDocument();
			xml.flush();
		}
		catch (XMLStreamException ex) {
			throw new IllegalStateException(ex);
		}
	}

	/** An element with others in it. */
	public XmlText element(String name, Body body) throws XMLStreamException {
		this.xml.writeCharacters("\n");
		this.xml.writeStartElement(name);
		body.write(this);
		this.xml.writeEndElement();
		return this;
	}

	/** An element with a text in it; none where there is no text. */
	public XmlText element(String name, @Nullable Object text) throws XMLStreamException {
		if (text != null) {
			element(name, (within) -> within.text(text));
		}
		return this;
	}

	/** An attribute of the element just begun. */
	public XmlText attribute(String name, Object value) throws XMLStreamException {
		this.xml.writeAttribute(name, storable(value));
		return this;
	}

	public XmlText text(Object text) throws XMLStreamException {
		this.xml.writeCharacters(storable(text));
		return this;
	}

	/** What XML 1.0 can't hold is left out. */
	private static String storable(Object text) {
		return text.toString().replaceAll("[^\\t\\n\\r\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]", "");
	}

	/**
	 * What stands in a document or an element.
	 */
	public interface Body {

		void write(XmlText xml) throws XMLStreamException;

	}

}
