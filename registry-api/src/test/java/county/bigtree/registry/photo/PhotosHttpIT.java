package county.bigtree.registry.photo;

import java.util.List;
import java.util.Map;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.image.TestPictures;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Photos over HTTP: who sees them when, what is decided on them, and what is refused.
 */
@RegistryTest
class PhotosHttpIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void aPhotoIsPrivateUntilItIsPassed() throws Exception {
		this.trees.county("photopass", "QPA");
		TestTrees.Filed tree = this.trees.standing("photopass", 120, "2020-05-02");
		TestPerson sender = this.people.volunteer("photopass");
		ResultActions sent = TestPhotos
			.send(this.trees, photosOf(tree), TestPictures.jpeg(1000, 700), sender, "shows", "bark", "takenOn",
					"2020-05-02", "text", "Deep furrows.", "credit", "A. Walker")
			.andExpect(jsonPath("$.status").value("waiting"))
			.andExpect(jsonPath("$.published").value(false))
			.andExpect(jsonPath("$.images[*].width", contains(320, 800, 1000)))
			.andExpect(jsonPath("$.images[2].height").value(700));
		String photo = TestPhotos.id(sent);
		sent.andExpect(header().string(HttpHeaders.LOCATION, "/api/v1/photos/" + photo));
		TestPerson verifier = this.people.verifier("photopass");
		requireHidden(photo, tree);
		for (TestPerson involved : List.of(sender, verifier, this.people.coordinator("photopass"))) {
			this.trees.ask(get("/api/v1/photos/" + photo), involved).andExpect(status().isOk());
			this.trees.ask(get("/api/v1/photos/" + photo + "/image"), involved)
				.andExpect(status().isOk())
				.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "private, no-store"));
		}
		decide(photo, "pass", null, verifier).andExpect(status().isOk())
			.andExpect(jsonPath("$.published").value(true))
			.andExpect(jsonPath("$.by").value(sender.creditName()));
		this.mvc.perform(get("/api/v1/photos/" + photo))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.text").value("Deep furrows."))
			.andExpect(jsonPath("$.credit").value("A. Walker"))
			.andExpect(jsonPath("$.takenOn").value("2020-05-02"))
			.andExpect(jsonPath("$.by").value(nullValue()));
		this.mvc.perform(get(photosOf(tree))).andExpect(jsonPath("$.items", hasSize(1)));
		this.mvc.perform(get("/trees/" + tree.tree()))
			.andExpect(content().string(containsString("alt=\"Deep furrows.\"")))
			.andExpect(content().string(containsString(", 2 May 2020")))
			.andExpect(content().string(containsString("Photo: A. Walker")))
			.andExpect(content().string(containsString("/api/v1/photos/" + photo + "/image?width=320 320w")));
		assertThat(story(tree)).contains("passed a photo of", "that shows its bark.");
		decide(photo, "take-back", "a face can be made out", verifier).andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("waiting"));
		requireHidden(photo, tree);
		this.mvc.perform(get("/trees/" + tree.tree())).andExpect(content().string(not(containsString(photo))));
		assertThat(story(tree)).doesNotContain("passed a photo of");
		this.trees.ask(get("/api/v1/photos/" + photo), sender)
			.andExpect(jsonPath("$.reason").value("a face can be made out"));
	}

	private void requireHidden(String photo, TestTrees.Filed tree) throws Exception {
		for (@Nullable
		TestPerson asker : new @Nullable TestPerson[] { null, this.people.volunteer("photopass"), tree.filer(),
				this.people.coordinator("photopassbeside"), this.people.administrator() }) {
			for (String address : List.of("/api/v1/photos/" + photo, "/api/v1/photos/" + photo + "/image",
					"/api/v1/photos/" + photo + "/image?width=320")) {
				asked(get(address), asker).andExpect(status().isNotFound());
			}
			asked(get(photosOf(tree)), asker).andExpect(status().isOk()).andExpect(jsonPath("$.items", hasSize(0)));
		}
	}

	@Test
	void picturesComeInTheSizeAskedForAndAreAskedForAnew() throws Exception {
		this.trees.county("photosize", "QPB");
		TestTrees.Filed tree = this.trees.standing("photosize", 120, "2020-05-02");
		String photo = TestPhotos.id(TestPhotos.send(this.trees, photosOf(tree), TestPictures.jpeg(1000, 700),
				this.people.volunteer("photosize"), "text", "An oak."));
		decide(photo, "pass", null, this.people.verifier("photosize")).andExpect(status().isOk());
		String image = "/api/v1/photos/" + photo + "/image";
		for (Map.Entry<String, Integer> size : Map
			.of("?width=320", 320, "?width=800", 800, "?width=1600", 1000, "", 1000)
			.entrySet()) {
			MockHttpServletResponse answer = this.mvc.perform(get(image + size.getKey()).accept("image/*"))
				.andExpect(status().isOk())
				.andExpect(content().contentType(MediaType.IMAGE_JPEG))
				.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "public, max-age=0, must-revalidate"))
				.andExpect(header().string("X-Content-Type-Options", "nosniff"))
				.andReturn()
				.getResponse();
			assertThat(javax.imageio.ImageIO.read(new java.io.ByteArrayInputStream(answer.getContentAsByteArray()))
				.getWidth()).isEqualTo(size.getValue());
			this.mvc.perform(get(image + size.getKey()).header(HttpHeaders.IF_NONE_MATCH,
					String.valueOf(answer.getHeader(HttpHeaders.ETAG))))
				.andExpect(status().isNotModified());
		}
		this.mvc.perform(get(image + "?width=321"))
			.andExpect(status().isBadRequest())
			.andExpect(jsonPath("$.parameter").value("width"));
	}

	@Test
	void allOwnersMustLetPhotosBePublishedAndTheTreeBeListed() throws Exception {
		this.trees.county("photoowner", "QPC");
		TestTrees.Filed tree = this.trees.standing("photoowner", 120, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("photoowner");
		TestPerson sender = this.people.volunteer("photoowner");
		String photo = passed(tree, sender);
		this.mvc.perform(get("/api/v1/photos/" + photo)).andExpect(status().isOk());
		String owner = JsonPath.read(this.trees
			.ask(post("/api/v1/trees/" + tree.tree() + "/owners").content("{\"name\": \"C. Landholder\"}"), coordinator)
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		requireStatus(photo, 404);
		consents(owner, "photos", true, coordinator);
		requireStatus(photo, 404);
		this.trees.ask(get("/api/v1/photos/" + photo), sender)
			.andExpect(jsonPath("$.tree").value(nullValue()))
			.andExpect(jsonPath("$.tag").value(nullValue()));
		consents(owner, "listing", true, coordinator);
		requireStatus(photo, 200);
		consents(owner, "photos", false, coordinator);
		requireStatus(photo, 404);
		this.mvc.perform(get("/trees/" + tree.tree()))
			.andExpect(status().isOk())
			.andExpect(content().string(not(containsString(photo))));
		this.trees.ask(get("/api/v1/photos/" + photo), coordinator)
			.andExpect(jsonPath("$.status").value("passed"))
			.andExpect(jsonPath("$.published").value(false));
	}

	private void requireStatus(String photo, int status) throws Exception {
		for (String end : List.of("", "/image", "/image?width=320")) {
			this.mvc.perform(get("/api/v1/photos/" + photo + end)).andExpect(status().is(status));
		}
	}

	private void consents(String owner, String purpose, boolean given, TestPerson coordinator) throws Exception {
		this.trees.ask(post("/api/v1/owners/" + owner + "/consents").content("""
				{"purposes": ["%s"], "given": %s, "how": "letter"}""".formatted(purpose, given)), coordinator)
			.andExpect(status().is2xxSuccessful());
	}

	@Test
	void aSheetOfPaperIsNeverPublished() throws Exception {
		this.trees.county("photosheet", "QPD");
		TestTrees.Filed tree = this.trees.standing("photosheet", 120, "2020-05-02");
		TestPerson verifier = this.people.verifier("photosheet");
		String sheet = TestPhotos.sent(this.trees, "/api/v1/measurements/" + tree.measurement() + "/photos",
				tree.filer(), "shows", "sheet", "text", "The sheet.");
		decide(sheet, "pass", null, verifier).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		requireStatus(sheet, 404);
		this.trees.ask(get("/api/v1/measurements/" + tree.measurement() + "/photos"), verifier)
			.andExpect(jsonPath("$.items[0].id").value(sheet));
		this.trees.ask(get("/api/v1/counties/photosheet/queue"), this.people.coordinator("photosheet"))
			.andExpect(jsonPath("$.items", hasSize(0)));
	}

	@Test
	void whatIsDecidedFollowsItsRules() throws Exception {
		this.trees.county("photorules", "QPE");
		TestTrees.Filed tree = this.trees.standing("photorules", 120, "2020-05-02");
		TestPerson verifier = this.people.verifier("photorules");
		TestPerson other = this.people.verifier("photorules");
		TestPerson coordinator = this.people.coordinator("photorules");
		String photo = TestPhotos.sent(this.trees, photosOf(tree), verifier);
		this.trees.ask(get("/api/v1/counties/photorules/queue"), coordinator)
			.andExpect(jsonPath("$.items[0].kind").value("photo"))
			.andExpect(jsonPath("$.items[0].status").value("whole"));
		this.trees.ask(get("/api/v1/counties/photorules/photos?status=waiting"), other)
			.andExpect(jsonPath("$.items[*].id", contains(photo)));
		decide(photo, "pass", null, other).andExpect(jsonPath("$.errors[0].pointer").value("#/text"));
		decideWith(photo, "{\"decision\": \"pass\", \"text\": \"An oak.\"}", verifier)
			.andExpect(status().isForbidden());
		decide(photo, "refuse", null, other).andExpect(jsonPath("$.errors[0].pointer").value("#/reason"));
		decide(photo, "take-back", "no", other).andExpect(status().isConflict());
		decide(photo, "withdraw", null, other).andExpect(status().isForbidden());
		decide(photo, "dance", null, other).andExpect(jsonPath("$.errors[0].code").value("unknown"));
		this.trees
			.ask(post("/api/v1/photos/" + photo + "/decisions").content("{\"decision\": \"withdraw\"}")
				.header(HttpHeaders.IF_MATCH, "\"7-x\""), verifier)
			.andExpect(status().isPreconditionFailed())
			.andExpect(jsonPath("$.present.status").value("waiting"));
		decide(photo, "refuse", "too dark", other).andExpect(jsonPath("$.status").value("refused"));
		decideWith(photo, "{\"decision\": \"pass\", \"text\": \"An oak.\"}", other)
			.andExpect(jsonPath("$.status").value("passed"))
			.andExpect(jsonPath("$.text").value("An oak."));
		decide(photo, "withdraw", null, verifier).andExpect(jsonPath("$.status").value("withdrawn"));
		decide(photo, "pass", null, coordinator).andExpect(status().isConflict());
		String own = TestPhotos.sent(this.trees, photosOf(tree), coordinator, "text", "An oak.");
		decide(own, "pass", null, coordinator).andExpect(jsonPath("$.published").value(true));
		this.trees.ask(get("/api/v1/counties/photorules/journal?limit=1"), coordinator)
			.andExpect(jsonPath("$.items[0].kind").value("photo-pass"))
			.andExpect(jsonPath("$.items[0].trees[0].tree").value(tree.tree()));
		this.trees.ask(get("/api/v1/people/me/photos"), verifier).andExpect(jsonPath("$.items[*].id", contains(photo)));
	}

	@Test
	void onlyVolunteersOfTheCountySendPhotosOfWhatTheyMaySee() throws Exception {
		this.trees.county("photowho", "QPF");
		TestPerson filer = this.people.volunteer("photowho");
		TestTrees.Filed waiting = this.trees.nominate("photowho", filer, "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		byte[] file = TestPictures.jpeg(200, 200);
		TestPerson another = this.people.volunteer("photowho");
		for (String address : List.of(photosOf(waiting), "/api/v1/measurements/" + waiting.measurement() + "/photos")) {
			TestPhotos.send(this.trees, address, file, another).andExpect(status().isNotFound());
			TestPhotos.send(this.trees, address, file, filer).andExpect(status().isCreated());
			TestPhotos.send(this.trees, address, file, this.people.withFilingToken(filer))
				.andExpect(status().isCreated());
		}
		TestTrees.Filed standing = this.trees.standing("photowho", 120, "2020-05-02");
		TestPhotos.send(this.trees, photosOf(standing), file, another).andExpect(status().isCreated());
		TestPhotos.send(this.trees, photosOf(standing), file, this.people.volunteer("photopassbeside"))
			.andExpect(status().isForbidden());
		String photo = passed(waiting, filer);
		requireStatus(photo, 404);
		this.trees.signOff(waiting.measurement(), this.people.verifier("photowho"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		requireStatus(photo, 200);
	}

	@Test
	void aPhotoGoesWithItsTreeIntoTheOneThatIsKept() throws Exception {
		this.trees.county("photomerge", "QPG");
		TestTrees.Filed kept = this.trees.standing("photomerge", 130, "2020-05-02");
		TestTrees.Filed merged = this.trees.standing("photomerge", 120, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("photomerge");
		String photo = passed(merged, coordinator);
		this.trees
			.decide("/api/v1/trees/" + merged.tree(), "/merge",
					"{\"into\": \"%s\", \"reason\": \"the same\"}".formatted(kept.tree()), coordinator)
			.andExpect(status().is2xxSuccessful());
		this.mvc.perform(get(photosOf(kept)))
			.andExpect(jsonPath("$.items[*].id", contains(photo)))
			.andExpect(jsonPath("$.items[0].tree").value(kept.tree()));
		this.mvc.perform(get("/trees/" + kept.tree())).andExpect(content().string(containsString(photo)));
		TestPhotos.send(this.trees, photosOf(merged), TestPictures.jpeg(200, 200), coordinator)
			.andExpect(status().isConflict())
			.andExpect(jsonPath("$.kept").value(kept.tree()));
	}

	@Test
	void whatIsNoPhotoIsRefusedAndNothingKept() throws Exception {
		this.trees.county("photobad", "QPH");
		TestTrees.Filed tree = this.trees.standing("photobad", 120, "2020-05-02");
		TestPerson sender = this.people.volunteer("photobad");
		Map<String, byte[]> files = Map.of("not-a-photo", TestPictures.written(TestPictures.quarters(200, 200), "gif"),
				"too-many-pixels", TestPictures.png(30_000, 30_000, 1_000_000), "cut-off",
				java.util.Arrays.copyOf(TestPictures.jpeg(300, 300), 900), "too-small", TestPictures.jpeg(20, 20));
		for (Map.Entry<String, byte[]> file : files.entrySet()) {
			TestPhotos.send(this.trees, photosOf(tree), file.getValue(), sender)
				.andExpect(status().isUnprocessableContent())
				.andExpect(jsonPath("$.errors[0].pointer").value("#/file"))
				.andExpect(jsonPath("$.errors[0].code").value(file.getKey()));
		}
		TestPhotos.send(this.trees, photosOf(tree), new byte[PhotoLimits.MOST_BYTES + 1], sender)
			.andExpect(status().isContentTooLarge());
		byte[] good = TestPictures.jpeg(200, 200);
		Map<String, List<String>> wrong = Map.of("shows", List.of("face", "unknown"), "takenOn",
				List.of("yesterday", "wrong-form"), "text", List.of("x".repeat(501), "wrong-length"), "credit",
				List.of("a\u0000b", "wrong-form"));
		for (Map.Entry<String, List<String>> one : wrong.entrySet()) {
			TestPhotos.send(this.trees, photosOf(tree), good, sender, one.getKey(), one.getValue().get(0))
				.andExpect(jsonPath("$.errors[0].pointer").value("#/" + one.getKey()))
				.andExpect(jsonPath("$.errors[0].code").value(one.getValue().get(1)));
		}
		TestPhotos.send(this.trees, photosOf(tree), good, sender, "takenOn", "2999-01-01")
			.andExpect(jsonPath("$.errors[0].code").value("out-of-range"));
		this.trees.ask(get(photosOf(tree)), sender).andExpect(jsonPath("$.items", hasSize(0)));
	}

	private String passed(TestTrees.Filed tree, TestPerson sender) throws Exception {
		String photo = TestPhotos.sent(this.trees, photosOf(tree), sender, "text", "An oak.");
		String county = JsonPath.read(this.trees.ask(get("/api/v1/trees/" + tree.tree()), sender)
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.county");
		decide(photo, "pass", null, this.people.verifier(county)).andExpect(status().isOk());
		return photo;
	}

	private ResultActions decide(String photo, String decision, @Nullable String reason, TestPerson by)
			throws Exception {
		return decideWith(photo, "{\"decision\": \"%s\"%s}".formatted(decision,
				(reason != null) ? ", \"reason\": \"" + reason + "\"" : ""), by);
	}

	private ResultActions decideWith(String photo, String body, TestPerson by) throws Exception {
		return this.trees.decide("/api/v1/photos/" + photo, "/decisions", body, by);
	}

	private String story(TestTrees.Filed tree) throws Exception {
		return this.mvc.perform(get("/api/v1/trees/" + tree.tree() + "/story"))
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	private ResultActions asked(MockHttpServletRequestBuilder request, @Nullable TestPerson asker) throws Exception {
		return (asker == null) ? this.mvc.perform(request) : this.trees.ask(request, asker);
	}

	private static String photosOf(TestTrees.Filed tree) {
		return "/api/v1/trees/" + tree.tree() + "/photos";
	}

}
