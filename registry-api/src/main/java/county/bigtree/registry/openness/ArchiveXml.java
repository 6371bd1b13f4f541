package county.bigtree.registry.openness;

import java.io.Writer;
import java.time.LocalDate;
import java.util.List;

import javax.xml.stream.XMLStreamException;

import county.bigtree.registry.county.ReadCounties;
import org.jspecify.annotations.Nullable;

/**
 * What a Darwin Core archive says of itself: which columns hold what (Darwin Core text
 * guide, 2), and what the data set is (Ecological Metadata Language 2.2.0).
 */
final class ArchiveXml {

	private static final String TEXT = "http://rs.tdwg.org/dwc/text/";

	private static final String EML = "https://eml.ecoinformatics.org/eml-2.2.0";

	private ArchiveXml() {
	}

	static void meta(Writer to, DarwinTable<?> core, DarwinTable<?> extension) {
		XmlText.write(to, (xml) -> xml.element("archive", (archive) -> {
			archive.attribute("xmlns", TEXT).attribute("metadata", "eml.xml");
			archive.element("core", (one) -> table(one, core, "id"));
			archive.element("extension", (one) -> table(one, extension, "coreid"));
		}));
	}

	private static void table(XmlText xml, DarwinTable<?> table, String id) throws XMLStreamException {
		xml.attribute("encoding", "UTF-8")
			.attribute("fieldsTerminatedBy", "\\t")
			.attribute("linesTerminatedBy", "\\n")
			.attribute("fieldsEnclosedBy", "")
			.attribute("ignoreHeaderLines", 1)
			.attribute("rowType", table.rowType());
		xml.element("files", (files) -> files.element("location", table.file()));
		xml.element(id, (one) -> one.attribute("index", 0));
		// An extension's first column is its coreid and no term of its own.
		for (int i = id.equals("id") ? 0 : 1; i < table.columns().size(); i++) {
			int index = i;
			xml.element("field",
					(field) -> field.attribute("index", index).attribute("term", table.columns().get(index).term()));
		}
	}

	static void eml(Writer to, About about) {
		ReadCounties.County county = about.county();
		XmlText.write(to, (xml) -> xml.element("eml:eml", (eml) -> {
			eml.attribute("xmlns:eml", EML)
				.attribute("packageId", "urn:bigtree:" + county.key() + ":" + about.day())
				.attribute("system", about.address())
				.attribute("xml:lang", "en");
			eml.element("dataset", (dataset) -> dataset(dataset, about));
		}));
	}

	private static void dataset(XmlText xml, About about) throws XMLStreamException {
		String registry = about.county().name() + " big-tree registry";
		xml.element("title", "The largest trees of " + about.county().name() + ", " + about.county().state());
		xml.element("creator", (party) -> party.element("organizationName", registry));
		xml.element("metadataProvider", (party) -> party.element("organizationName", registry));
		xml.element("pubDate", about.day());
		xml.element("language", "en");
		xml.element("abstract", (text) -> text.element("para",
				"Trees nominated and measured by volunteers and confirmed by verifiers, with girth, height, mean crown "
						+ "spread and points of each measurement. Places are shown as exactly as their owners allow. "
						+ "Trees that an owner does not let be listed are left out."));
		rights(xml, about.license());
		xml.element("distribution", (distribution) -> distribution.element("online", (online) -> online.element("url",
				(url) -> url.attribute("function", "information").text(about.address()))));
		if (about.extent() != null) {
			coverage(xml, about.county(), about.extent());
		}
		xml.element("contact", (party) -> party.element("organizationName", registry));
	}

	private static void rights(XmlText xml, @Nullable String license) throws XMLStreamException {
		xml.element("intellectualRights", (rights) -> rights.element("para", (para) -> {
			if (license == null) {
				para.text("The county states no licence; ask it before you use the data.");
			}
			else {
				para.text("This work is licensed under ");
				para.element("ulink", (link) -> link.attribute("url", license).element("citetitle", license));
				para.text(".");
			}
		}));
	}

	private static void coverage(XmlText xml, ReadCounties.County county, Extent extent) throws XMLStreamException {
		xml.element("coverage", (coverage) -> {
			coverage.element("geographicCoverage", (place) -> {
				place.element("geographicDescription", county.name() + ", " + county.state());
				place.element("boundingCoordinates", (box) -> {
					box.element("westBoundingCoordinate", CountyInCsv.degrees(extent.box().west()));
					box.element("eastBoundingCoordinate", CountyInCsv.degrees(extent.box().east()));
					box.element("northBoundingCoordinate", CountyInCsv.degrees(extent.box().north()));
					box.element("southBoundingCoordinate", CountyInCsv.degrees(extent.box().south()));
				});
			});
			coverage.element("temporalCoverage", (time) -> time.element("rangeOfDates", (range) -> {
				range.element("beginDate", (day) -> day.element("calendarDate", extent.first()));
				range.element("endDate", (day) -> day.element("calendarDate", extent.last()));
			}));
			coverage.element("taxonomicCoverage", (taxa) -> {
				for (String name : extent.species()) {
					taxa.element("taxonomicClassification", (taxon) -> taxon.element("taxonRankValue", name));
				}
			});
		});
	}

	/**
	 * What the data set is about.
	 *
	 * @param day on which it is as it is
	 * @param address where the county's page is
	 * @param extent null where there are no trees with a place and a day
	 */
	record About(ReadCounties.County county, LocalDate day, String address, @Nullable String license,
			@Nullable Extent extent) {
	}

	/**
	 * Where and when trees were measured, and of which species they are.
	 */
	record Extent(Box box, LocalDate first, LocalDate last, List<String> species) {

		Extent {
			species = List.copyOf(species);
		}

	}

}
