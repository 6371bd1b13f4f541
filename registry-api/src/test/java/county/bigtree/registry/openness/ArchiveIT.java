package county.bigtree.registry.openness;

import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.openness.TestOpenCounty.One;
import county.bigtree.registry.openness.TestOpenCounty.Planted;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A county's Darwin Core archive, read by nothing but what its own meta.xml says (Darwin
 * Core text guide), with Commons CSV and the JDK's XML parser.
 */
@RegistryTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ArchiveIT {

	private static final String COUNTY = "archiveland";

	private static final String ADDRESS = "/exports/" + COUNTY + "/dwca.zip";

	private static final String DARWIN_CORE_TEXT = "darwin-core-text.xsd";

	private static final String ECOLOGICAL_METADATA = "eml-2.2.0-used.xsd";

	private static final String DARWIN_CORE = "http://rs.tdwg.org/dwc/terms/";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestOpenCounty counties;

	@SuppressWarnings("NullAway.Init")
	private Planted planted;

	@BeforeAll
	void plant() throws Exception {
		this.planted = this.counties.found(COUNTY, "ARC");
	}

	@Test
	void itsTablesHoldWhatItsDescriptionSays() throws Exception {
		Map<String, String> files = files();
		assertThat(files.keySet()).containsExactly("meta.xml", "occurrence.txt", "measurementorfact.txt", "eml.xml");
		Element archive = xml(files, "meta.xml").getDocumentElement();
		assertThat(archive.getNamespaceURI()).isEqualTo("http://rs.tdwg.org/dwc/text/");
		assertThat(archive.getAttribute("metadata")).isEqualTo("eml.xml");
		for (Element table : List.of(only(archive, "core"), only(archive, "extension"))) {
			String[] header = Objects.requireNonNull(files.get(only(table, "location").getTextContent()))
				.split("\n", 2)[0].split("\t");
			NodeList fields = table.getElementsByTagNameNS("*", "field");
			boolean core = table.getLocalName().equals("core");
			assertThat(fields.getLength()).isEqualTo(core ? header.length : header.length - 1);
			for (int i = 0; i < fields.getLength(); i++) {
				Element field = (Element) fields.item(i);
				assertThat(field.getAttribute("term"))
					.endsWith("/" + header[Integer.parseInt(field.getAttribute("index"))]);
			}
		}
		assertThat(only(archive, "core").getAttribute("rowType")).isEqualTo(DARWIN_CORE + "Occurrence");
		assertThat(only(archive, "extension").getAttribute("rowType")).isEqualTo(DARWIN_CORE + "MeasurementOrFact");
	}

	@Test
	void eachTreeIsAnOccurrenceWhereItIsShown() throws Exception {
		List<Map<String, String>> occurrences = table("core");
		assertThat(column(occurrences, "id")).containsExactly("urn:uuid:" + this.planted.exact().id(),
				"urn:uuid:" + this.planted.nearby().id(), "urn:uuid:" + this.planted.countyOnly().id());
		assertThat(column(occurrences, "basisOfRecord")).containsOnly("HumanObservation");
		assertThat(column(occurrences, "occurrenceStatus")).containsOnly("present");
		assertThat(column(occurrences, "scientificName")).containsOnly("Quercus alba");
		assertThat(column(occurrences, "taxonRank")).containsOnly("species");
		assertThat(column(occurrences, "eventDate")).containsOnly("2024-05-02");
		assertThat(column(occurrences, "decimalLatitude")).containsExactly("40.123457", "40.125000", "");
		assertThat(column(occurrences, "coordinateUncertaintyInMeters")).containsExactly("8.0", "800.0", "");
		assertThat(column(occurrences, "geodeticDatum")).containsExactly("EPSG:4326", "EPSG:4326", "");
		assertThat(column(occurrences, "informationWithheld")).satisfiesExactly((exact) -> assertThat(exact).isEmpty(),
				(nearby) -> assertThat(nearby).isNotEmpty(), (county) -> assertThat(county).isNotEmpty());
		assertThat(column(occurrences, "dataGeneralizations").get(0)).isEmpty();
		assertThat(column(occurrences, "dataGeneralizations").get(1)).contains("grid");
		assertThat(column(occurrences, "license")).as("none is stated").containsOnly("");
	}

	@Test
	void everyFigureBelongsToATreeAndHasItsUnit() throws Exception {
		List<String> ids = column(table("core"), "id");
		assertThat(ids).doesNotHaveDuplicates();
		List<Map<String, String>> facts = table("extension");
		assertThat(facts).hasSize(12);
		assertThat(column(facts, "id")).as("no orphan").allMatch(ids::contains);
		assertThat(column(facts, "measurementID")).doesNotHaveDuplicates();
		List<Map<String, String>> exact = facts.stream().filter((fact) -> ids.get(0).equals(fact.get("id"))).toList();
		assertThat(column(exact, "measurementType")).containsExactly("girth", "height", "crown spread", "points");
		assertThat(column(exact, "measurementValue")).containsExactly("130.00", "80.00", "40.00", "220.00");
		assertThat(column(exact, "measurementUnit")).containsExactly("in", "ft", "ft", "points");
		assertThat(column(exact, "measurementMethod").subList(0, 3)).containsExactly("tape", "pole", "axes");
		assertThat(column(exact, "measurementAccuracy")).allMatch((text) -> Double.parseDouble(text) > 0);
		assertThat(column(exact, "measurementDeterminedDate")).containsOnly("2024-05-02");
	}

	/** What the schemas hold, and where from, stands in each. */
	@Test
	void itsDescriptionsFollowTheirSchemas() throws Exception {
		Map<String, String> files = files();
		String meta = Objects.requireNonNull(files.get("meta.xml"));
		String eml = Objects.requireNonNull(files.get("eml.xml"));
		assertThat(faults(DARWIN_CORE_TEXT, meta)).isEmpty();
		assertThat(faults(ECOLOGICAL_METADATA, eml)).isEmpty();
		this.trees.county("archivebare", "ARB");
		String bare = Objects.requireNonNull(files("/exports/archivebare/dwca.zip").get("eml.xml"));
		assertThat(faults(ECOLOGICAL_METADATA, bare)).as("no tree, so no coverage").isEmpty();
	}

	/** A schema that takes everything would prove nothing. */
	@Test
	void theSchemasRefuseWhatTheStandardsDo() throws Exception {
		Map<String, String> files = files();
		String meta = Objects.requireNonNull(files.get("meta.xml"));
		String eml = Objects.requireNonNull(files.get("eml.xml"));
		assertThat(faults(DARWIN_CORE_TEXT, meta.replace("rowType", "rowKind"))).isNotEmpty();
		assertThat(faults(DARWIN_CORE_TEXT, meta.replaceFirst("<coreid [^>]*/?>(</coreid>)?", ""))).isNotEmpty();
		assertThat(faults(DARWIN_CORE_TEXT, meta.replaceFirst("index=\"0\"", "index=\"first\""))).isNotEmpty();
		assertThat(faults(ECOLOGICAL_METADATA, eml.replaceFirst("packageId=\"[^\"]*\"", ""))).isNotEmpty();
		assertThat(faults(ECOLOGICAL_METADATA, eml.replaceFirst("<pubDate>[^<]*", "<pubDate>some day"))).isNotEmpty();
		assertThat(faults(ECOLOGICAL_METADATA, eml.replaceAll("contact>", "contract>"))).isNotEmpty();
		assertThat(faults(ECOLOGICAL_METADATA, eml.replace("function=\"information\"", "function=\"news\"")))
			.isNotEmpty();
		assertThat(faults(ECOLOGICAL_METADATA, eml.replaceFirst("(<northBoundingCoordinate>)", "$11")))
			.as("north of the pole")
			.isNotEmpty();
	}

	/**
	 * Order and presence by the sequences of Ecological Metadata Language 2.2.0, modules
	 * eml-resource, eml-dataset and eml-coverage.
	 */
	@Test
	void itsMetadataStandInTheOrderOfTheLanguage() throws Exception {
		Element eml = xml(files(), "eml.xml").getDocumentElement();
		assertThat(eml.getNamespaceURI()).isEqualTo("https://eml.ecoinformatics.org/eml-2.2.0");
		assertThat(eml.getAttribute("packageId")).isNotEmpty();
		assertThat(eml.getAttribute("system")).isNotEmpty();
		Element dataset = only(eml, "dataset");
		assertThat(dataset.getNamespaceURI()).isNull();
		assertThat(children(dataset)).containsExactly("title", "creator", "metadataProvider", "pubDate", "language",
				"abstract", "intellectualRights", "distribution", "coverage", "contact");
		assertThat(children(only(dataset, "coverage"))).containsExactly("geographicCoverage", "temporalCoverage",
				"taxonomicCoverage");
		assertThat(children(only(dataset, "boundingCoordinates"))).containsExactly("westBoundingCoordinate",
				"eastBoundingCoordinate", "northBoundingCoordinate", "southBoundingCoordinate");
		assertThat(only(dataset, "intellectualRights").getTextContent()).contains("states no licence");
		assertThat(only(dataset, "beginDate").getTextContent().strip()).isEqualTo("2024-05-02");
	}

	@Test
	void isTheSameToTheByteAsLongAsNothingChanges() throws Exception {
		MockHttpServletResponse first = answer();
		String tag = String.valueOf(first.getHeader(HttpHeaders.ETAG));
		assertThat(answer().getContentAsByteArray()).isEqualTo(first.getContentAsByteArray());
		this.mvc.perform(get(ADDRESS).header(HttpHeaders.IF_NONE_MATCH, tag))
			.andExpect(status().isNotModified())
			.andExpect(content().string(""));
	}

	@Test
	void nothingLeadsToWhatIsNotShown() throws Exception {
		One hidden = this.planted.unlisted();
		String all = String.join("\n", files().values());
		assertThat(all).doesNotContain(hidden.id(), hidden.tag(), hidden.measurement(), "Landholder", "Measurer");
		assertThat(table("core").stream().filter((row) -> row.toString().contains(TestOpenCounty.EXACT_LATITUDE)))
			.hasSize(1);
		this.trees.practiceCounty("archivepractice", "ARP");
		this.mvc.perform(get("/exports/archivepractice/dwca.zip")).andExpect(status().isNotFound());
	}

	private static List<String> faults(String schema, String xml) throws Exception {
		List<String> faults = new ArrayList<>();
		SchemaFactory schemas = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
		schemas.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "file");
		try {
			schemas.newSchema(ArchiveIT.class.getResource(schema))
				.newValidator()
				.validate(new StreamSource(new StringReader(xml)));
		}
		catch (SAXException ex) {
			faults.add(String.valueOf(ex.getMessage()));
		}
		return faults;
	}

	private MockHttpServletResponse answer() throws Exception {
		return answer(ADDRESS);
	}

	private MockHttpServletResponse answer(String address) throws Exception {
		return this.mvc.perform(get(address)).andExpect(status().isOk()).andReturn().getResponse();
	}

	private Map<String, String> files() throws Exception {
		return files(ADDRESS);
	}

	private Map<String, String> files(String address) throws Exception {
		Map<String, String> files = new LinkedHashMap<>();
		try (ZipInputStream zip = new ZipInputStream(
				new ByteArrayInputStream(answer(address).getContentAsByteArray()))) {
			for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
				files.put(entry.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
			}
		}
		return files;
	}

	/** The rows of a table by the terms that its description gives. */
	private List<Map<String, String>> table(String kind) throws Exception {
		Map<String, String> files = files();
		Element table = only(xml(files, "meta.xml").getDocumentElement(), kind);
		CSVFormat format = CSVFormat.DEFAULT.builder()
			.setDelimiter(table.getAttribute("fieldsTerminatedBy").replace("\\t", "\t"))
			.setRecordSeparator(table.getAttribute("linesTerminatedBy").replace("\\n", "\n"))
			.setQuote(null)
			.setSkipHeaderRecord(true)
			.setHeader()
			.get();
		assertThat(table.getAttribute("fieldsEnclosedBy")).isEmpty();
		assertThat(table.getAttribute("ignoreHeaderLines")).isEqualTo("1");
		String text = Objects.requireNonNull(files.get(only(table, "location").getTextContent()));
		List<Map<String, String>> rows = new ArrayList<>();
		for (CSVRecord line : format.parse(new StringReader(text))) {
			Map<String, String> row = new LinkedHashMap<>();
			row.put("id", line.get(0));
			NodeList fields = table.getElementsByTagNameNS("*", "field");
			for (int i = 0; i < fields.getLength(); i++) {
				Element field = (Element) fields.item(i);
				row.put(field.getAttribute("term").replaceFirst(".*/", ""),
						line.get(Integer.parseInt(field.getAttribute("index"))));
			}
			rows.add(row);
		}
		return rows;
	}

	private static List<String> column(List<Map<String, String>> rows, String term) {
		return rows.stream().map((row) -> Objects.requireNonNull(row.get(term), term)).toList();
	}

	private static Document xml(Map<String, String> files, String name) throws Exception {
		DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
		factory.setNamespaceAware(true);
		factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
		byte[] text = Objects.requireNonNull(files.get(name)).getBytes(StandardCharsets.UTF_8);
		return factory.newDocumentBuilder().parse(new ByteArrayInputStream(text));
	}

	private static Element only(Element within, String name) {
		NodeList found = within.getElementsByTagNameNS("*", name);
		assertThat(found.getLength()).as(name).isEqualTo(1);
		return (Element) found.item(0);
	}

	private static List<String> children(Element element) {
		List<String> names = new ArrayList<>();
		for (int i = 0; i < element.getChildNodes().getLength(); i++) {
			if (element.getChildNodes().item(i) instanceof Element child) {
				names.add(child.getLocalName());
			}
		}
		return names;
	}

}
