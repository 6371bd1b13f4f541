package county.bigtree.client;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Base64;
import java.util.List;
import java.util.UUID;

import com.google.gson.JsonParser;
import county.bigtree.client.api.NominationsApi;
import county.bigtree.client.model.CrownReading;
import county.bigtree.client.model.CrownReadingOneOf;
import county.bigtree.client.model.GirthReading;
import county.bigtree.client.model.GirthReadingOneOf;
import county.bigtree.client.model.HeightReading;
import county.bigtree.client.model.HeightReadingOneOf;
import county.bigtree.client.model.Length;
import county.bigtree.client.model.LengthOneOf;
import county.bigtree.client.model.MeasurementBody;
import county.bigtree.client.model.NominationBody;
import county.bigtree.client.model.NominationJson;
import county.bigtree.client.model.PlaceBody;
import org.junit.jupiter.api.Test;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

/**
 * A client that openapi-generator made from the description alone files a nomination at a
 * running register with the demo, and reads it again.
 */
class GeneratedClientTest {

	private static final String ADDRESS = System.getProperty("registry.address");

	private final NominationsApi nominations = new NominationsApi(client());

	@Test
	void filesANominationOnceAndReadsIt() throws Exception {
		String key = UUID.randomUUID().toString();
		NominationJson filed = this.nominations.fileNomination("larkmere", nomination(40), key);
		NominationJson again = this.nominations.fileNomination("larkmere", nomination(40), key);
		assertEquals(filed.getId(), again.getId());
		NominationJson read = this.nominations.getNomination(filed.getId(), null);
		assertEquals(filed.getTree(), read.getTree());
		assertEquals("submitted", read.getStatus());
		// A girth of 40 in, 30 ft of height and a quarter of 20 ft.
		assertEquals(0, new BigDecimal("75").compareTo(read.getMeasurement().getReduced().getPoints()));
	}

	@Test
	void isToldWhatIsWrong() {
		ApiException refused = assertThrows(ApiException.class,
				() -> this.nominations.fileNomination("larkmere", nomination(-1), UUID.randomUUID().toString()));
		assertEquals(422, refused.getCode());
		assertTrue(refused.getResponseBody().contains("#/measurement/girth/girth/value"), refused.getResponseBody());
	}

	private static NominationBody nomination(int girthInches) {
		return new NominationBody().species("asimina-triloba")
			.location(new PlaceBody().latitude(40.43).longitude(-87.76).accuracyMetres(8.0))
			.measurement(new MeasurementBody().measuredOn(LocalDate.now().minusDays(1).toString())
				.girth(new GirthReading(new GirthReadingOneOf().method(GirthReadingOneOf.MethodEnum.TAPE)
					.girth(length(girthInches, LengthOneOf.UnitEnum.IN))))
				.height(new HeightReading(new HeightReadingOneOf().method(HeightReadingOneOf.MethodEnum.POLE)
					.height(length(30, LengthOneOf.UnitEnum.FT))))
				.crown(new CrownReading(new CrownReadingOneOf().method(CrownReadingOneOf.MethodEnum.AXES)
					.axes(List.of(length(22, LengthOneOf.UnitEnum.FT), length(18, LengthOneOf.UnitEnum.FT)))))
				.confirmedChecks(List.of("unit-slip", "biggest-by-far", "odd-proportions", "beyond-species-limit",
						"likely-same-tree", "new-to-county")));
	}

	private static Length length(int value, LengthOneOf.UnitEnum unit) {
		return new Length(new LengthOneOf().value(BigDecimal.valueOf(value)).unit(unit));
	}

	private static ApiClient client() {
		String token = token();
		ApiClient client = new ApiClient();
		client.setBasePath(ADDRESS);
		client.addDefaultHeader("Authorization", "Bearer " + token);
		return client;
	}

	/** A token is made with the demo's password, which the description leaves to HTTP Basic. */
	private static String token() {
		String pair = Base64.getEncoder()
			.encodeToString("volunteer@demo.example:big trees in the demo county".getBytes());
		HttpRequest request = HttpRequest.newBuilder(URI.create(ADDRESS + "/api/v1/tokens"))
			.header("Authorization", "Basic " + pair)
			.header("Content-Type", "application/json")
			.POST(BodyPublishers
				.ofString("{\"name\": \"a client\", \"expiresOn\": \"" + LocalDate.now().plusDays(2) + "\"}"))
			.build();
		try {
			String made = HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
			return JsonParser.parseString(made).getAsJsonObject().get("token").getAsString();
		}
		catch (Exception ex) {
			throw new IllegalStateException(ex);
		}
	}

}
