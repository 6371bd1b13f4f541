package county.bigtree.registry.pages.offline;

import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.StreamSupport;

import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Filings that a phone saved as a file: JSON (RFC 8259), the entries of a form by name,
 * photos in base64 (RFC 4648), instants by ISO 8601. Whatever else stands in it is passed
 * over.
 */
record SavedFilings(List<Filing> filings) {

	private static final String FORMAT = "big-tree-filings";

	private static final int MOST_FILINGS = 50;

	private static final int MOST_ENTRIES = 200;

	private static final int DEEPEST = 8;

	/** Of a photo, in base64. */
	private static final int LONGEST_TEXT = 32 * 1024 * 1024;

	private static final JsonMapper JSON = JsonMapper
		.builder(JsonFactory.builder()
			.streamReadConstraints(
					StreamReadConstraints.builder().maxNestingDepth(DEEPEST).maxStringLength(LONGEST_TEXT).build())
			.build())
		.build();

	/**
	 * What a file holds; empty where it is no such file, or holds more than a phone
	 * saves.
	 */
	static Optional<SavedFilings> read(byte[] file) {
		try {
			JsonNode json = JSON.readTree(file);
			JsonNode filings = json.path("filings");
			if (!FORMAT.equals(json.path("format").asString("")) || json.path("version").asInt(0) != 1
					|| !filings.isArray() || filings.size() > MOST_FILINGS) {
				return Optional.empty();
			}
			return Optional
				.of(new SavedFilings(StreamSupport.stream(filings.spliterator(), false).map(Filing::from).toList()));
		}
		catch (JacksonException ex) {
			return Optional.empty();
		}
	}

	/**
	 * One of them.
	 *
	 * @param id by which it is done once
	 * @param name of who filled it in; empty where the phone didn't say
	 * @param address where its form stands
	 * @param entries what was typed, in order
	 */
	record Filing(String id, String name, String title, String address, String madeAt, List<Entry> entries,
			List<Photo> photos) {

		/** Entries of the form itself, which a new form has of its own. */
		private static final List<String> OWN = List.of("_csrf", "go", "step", "key");

		private static Filing from(JsonNode json) {
			List<Entry> entries = new ArrayList<>();
			json.path("entries").forEach((entry) -> {
				String name = entry.path(0).asString("");
				if (entries.size() < MOST_ENTRIES && !name.isEmpty() && !OWN.contains(name)) {
					entries.add(new Entry(name, entry.path(1).asString("")));
				}
			});
			List<Photo> photos = new ArrayList<>();
			json.path("photos").forEach((photo) -> Photo.find(photo).ifPresent(photos::add));
			return new Filing(json.path("id").asString(""), json.path("name").asString(""),
					json.path("title").asString(""), json.path("address").asString(""),
					json.path("madeAt").asString(""), entries, photos);
		}

		/** The first entry of each name. */
		Map<String, String> byName() {
			Map<String, String> values = new LinkedHashMap<>();
			this.entries.forEach((entry) -> values.putIfAbsent(entry.name(), entry.value()));
			return values;
		}

		/** Whether its form is one in which a coordinator files for others. */
		boolean isForm() {
			return this.address.equals("/nominate") || isMeasured() || isReport();
		}

		boolean isMeasured() {
			return this.address.matches("/remeasure|/trees/[A-Za-z0-9-]+/remeasure");
		}

		boolean isReport() {
			return this.address.matches("/report|/trees/[A-Za-z0-9-]+/report");
		}

	}

	/**
	 * What stands in a field.
	 */
	record Entry(String name, String value) {
	}

	/**
	 * A picture that goes with a filing.
	 *
	 * @param base64 its bytes, which are a picture's as far as anybody looked
	 */
	record Photo(String key, String name, String shows, String text, String takenOn, String credit, String mediaType,
			String base64) {

		private static Optional<Photo> find(JsonNode json) {
			String data = json.path("base64").asString("");
			String type = json.path("mediaType").asString("");
			if (!type.matches("image/(jpeg|png|webp)") || !isBase64(data)) {
				return Optional.empty();
			}
			return Optional.of(new Photo(json.path("key").asString(""), json.path("name").asString(""),
					json.path("shows").asString("whole"), json.path("text").asString(""),
					json.path("takenOn").asString(""), json.path("credit").asString(""), type, data));
		}

		private static boolean isBase64(String data) {
			try {
				return Base64.getDecoder().decode(data).length > 0;
			}
			catch (IllegalArgumentException ex) {
				return false;
			}
		}

		/** As a page shows it. */
		String address() {
			return "data:" + this.mediaType + ";base64," + this.base64;
		}

	}

}
