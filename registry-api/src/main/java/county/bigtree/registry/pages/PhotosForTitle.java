package county.bigtree.registry.pages;

import county.bigtree.registry.pages.form.Api;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.MissingNode;

/**
 * The passed photos that a county asks for before a measurement is signed off that would
 * bring a title, beside those that whoever looks may see.
 *
 * @param needed more than 0
 * @param waiting sent and not looked at yet
 */
public record PhotosForTitle(int needed, int passed, int waiting) {

	/**
	 * Reads them.
	 * @param measurement whose day says which rules hold
	 * @return null where the rules ask for none, or enough are passed
	 */
	public static @Nullable PhotosForTitle lacking(Api api, String county, JsonNode measurement) {
		int needed = needed(api.get("/counties/{county}/rulebooks", county).path("items"),
				measurement.path("measuredOn").asString(""));
		if (needed == 0) {
			return null;
		}
		int passed = 0;
		int waiting = 0;
		JsonNode photos = api.find("/trees/{tree}/photos", measurement.path("tree").asString(""));
		for (JsonNode photo : (photos != null) ? photos.path("items") : MissingNode.getInstance()) {
			String status = photo.path("status").asString("");
			passed += status.equals("passed") ? 1 : 0;
			waiting += status.equals("waiting") ? 1 : 0;
		}
		return (passed < needed) ? new PhotosForTitle(needed, passed, waiting) : null;
	}

	/** By the rules of the day; they are listed with the latest first. */
	private static int needed(JsonNode books, String measuredOn) {
		for (JsonNode book : books) {
			if (dayOf(book).compareTo(measuredOn) <= 0) {
				return book.path("photosRequired").asInt(0);
			}
		}
		return 0;
	}

	private static String dayOf(JsonNode book) {
		return book.path("effectiveOn").asString("");
	}

}
