package county.bigtree.registry.photo.store;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;

import javax.sql.DataSource;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.TestDatabase;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.archive.ArchiveRegister;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.command.TestCommands;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.TestPhotos;
import county.bigtree.registry.photo.image.TestPictures;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.PlatformTransactionManager;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Pictures in an object store: there before anybody is told so, seen by who may see them,
 * gone once erased even if the store was away then, missed when they are missing, and
 * carried by archives.
 */
@RegistryTest
@ExtendWith(OutputCaptureExtension.class)
class ObjectStoreIT {

	private static final String COUNTY = "photostore";

	private static final TestObjectStore there = TestObjectStore.begin();

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private List<RegisterCheck> checks;

	@Autowired
	private StoredPictures stored;

	@Autowired
	private DeleteObjects deleting;

	@Autowired
	private MovePictures moving;

	@Autowired
	private ArchiveRegister archives;

	@Autowired
	private RegisterClock clock;

	@Autowired
	private DataSource database;

	@Autowired
	private PlatformTransactionManager transactions;

	private TestTrees.Filed tree;

	private TestPerson coordinator;

	@DynamicPropertySource
	static void settings(DynamicPropertyRegistry registry) {
		there.settings().forEach((name, value) -> registry.add(name, () -> value));
	}

	@BeforeEach
	void county() throws Exception {
		if (this.jdbc.sql("select count(*) from county where key = ?").param(COUNTY).query(Long.class).single() == 0) {
			this.trees.county(COUNTY, "QPO");
		}
		this.tree = this.trees.standing(COUNTY, 120, "2020-05-02");
		this.coordinator = this.people.coordinator(COUNTY);
	}

	@Test
	void aPhotoIsThereForWhoMaySeeItAndNotInTheDatabase() throws Exception {
		String photo = sent();
		List<String> objects = objects(photo);
		assertThat(objects).isNotEmpty().doesNotHaveDuplicates();
		assertThat(there.objects()).containsAll(objects);
		assertThat(count("select count(*) from photo_body where body is not null")).isZero();
		assertThat(count("select count(*) from unnamed_object")).isZero();
		image(photo, null).andExpect(status().isNotFound());
		byte[] shown = image(photo, this.coordinator).andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsByteArray();
		assertThat(shown).isEqualTo(Files.readAllBytes(there.file(objects.get(objects.size() - 1))));
		this.trees
			.decide("/api/v1/photos/" + photo, "/decisions", "{\"decision\": \"pass\", \"text\": \"An oak.\"}",
					this.coordinator)
			.andExpect(status().isOk());
		image(photo, null).andExpect(status().isOk());
		assertThat(findings()).isEmpty();
	}

	@Test
	void anotherPictureIsNeverShownAndAMissingOneIsFound(CapturedOutput output) throws Exception {
		String photo = sent();
		List<String> objects = objects(photo);
		Path file = there.file(objects.get(objects.size() - 1));
		byte[] right = Files.readAllBytes(file);
		byte[] wrong = right.clone();
		wrong[wrong.length / 2] ^= 1;
		Files.write(file, wrong);
		image(photo, this.coordinator).andExpect(status().isInternalServerError());
		assertThat(findings()).singleElement().asString().contains(photo, "has another one there");
		Files.delete(file);
		image(photo, this.coordinator).andExpect(status().isInternalServerError());
		assertThat(findings()).singleElement().asString().contains(photo, "has lost its picture");
		Path folder = Files.createTempDirectory("archive");
		assertThatThrownBy(() -> this.archives.archive(folder.resolve("register.tar.gz"), (what, done, of) -> {
		})).hasMessageContaining(photo);
		assertThat(folder).isEmptyDirectory();
		erase(photo);
		this.deleting.run();
		assertThat(findings()).isEmpty();
		assertThat(output.getAll()).doesNotContain(TestObjectStore.SECRET);
	}

	@Test
	void whatIsErasedGoesFromTheStoreAlsoIfThatIsAwayMeanwhile() throws Exception {
		String photo = sent();
		String kept = sent();
		List<String> objects = objects(photo);
		there.stop();
		try {
			erase(photo);
			image(photo, this.coordinator).andExpect(status().isNotFound());
			assertThat(this.deleting.run()).isZero();
			assertThat(there.objects()).containsAll(objects);
			assertThat(count("select max(tries) from unnamed_object")).isPositive();
			// A day later it is no longer a matter of waiting.
			this.jdbc.sql("update unnamed_object set due_at = now()").update();
		}
		finally {
			there.start();
		}
		assertThat(this.deleting.run()).isEqualTo(objects.size());
		assertThat(there.objects()).doesNotContainAnyElementsOf(objects).containsAll(objects(kept));
		assertThat(count("select count(*) from unnamed_object")).isZero();
		assertThat(findings()).isEmpty();
	}

	@Test
	void aStoreThatIsAwayIsSaidAndNothingElseIsHeldUp() throws Exception {
		String photo = sent();
		long before = count("select count(*) from photo");
		there.stop();
		try {
			TestPhotos.send(this.trees, photos(), TestPictures.jpeg(400, 300), this.tree.filer())
				.andExpect(status().isServiceUnavailable())
				.andExpect(header().exists(HttpHeaders.RETRY_AFTER));
			image(photo, this.coordinator).andExpect(status().isServiceUnavailable())
				.andExpect(header().exists(HttpHeaders.RETRY_AFTER));
			this.mvc.perform(get("/readyz")).andExpect(status().isOk());
			this.trees.ask(get("/api/v1/photos/" + photo), this.coordinator).andExpect(status().isOk());
			assertThat(findings()).singleElement().asString().contains("could not all be looked at");
		}
		finally {
			there.start();
		}
		assertThat(count("select count(*) from photo")).isEqualTo(before);
		image(photo, this.coordinator).andExpect(status().isOk());
		sweep();
	}

	@Test
	void whatWasPutForAPhotoThatIsNotRecordedIsSwept() throws Exception {
		String object = this.stored.put(TestPictures.jpeg(200, 200));
		assertThat(there.objects()).contains(object);
		assertThat(this.deleting.run()).isZero();
		sweep();
		assertThat(there.objects()).doesNotContain(object);
		assertThatThrownBy(() -> this.stored.take(object)).isInstanceOf(StoreAway.class);
	}

	@Test
	void movesPicturesIntoTheDatabaseAndBack() throws Exception {
		String photo = sent();
		byte[] shown = image(photo, this.coordinator).andReturn().getResponse().getContentAsByteArray();
		List<String> objects = objects(photo);
		assertThat(this.moving.toDatabase((done) -> {
		})).isPositive();
		assertThat(count("select count(*) from photo_body where body is null")).isZero();
		this.deleting.run();
		assertThat(there.objects()).doesNotContainAnyElementsOf(objects);
		assertThat(image(photo, this.coordinator).andReturn().getResponse().getContentAsByteArray()).isEqualTo(shown);
		assertThat(findings()).isEmpty();
		assertThat(this.moving.toStore((done) -> {
		})).isPositive();
		assertThat(count("select count(*) from photo_body where body is not null")).isZero();
		assertThat(count("select count(*) from unnamed_object")).isZero();
		assertThat(image(photo, this.coordinator).andReturn().getResponse().getContentAsByteArray()).isEqualTo(shown);
		assertThat(findings()).isEmpty();
	}

	@Test
	void anArchiveHoldsThePicturesAndIsRestoredIntoTheStore(@TempDir Path folder) throws Exception {
		String photo = sent();
		Path file = folder.resolve("register.tar.gz");
		this.archives.archive(file, (what, done, of) -> {
		});
		int before = there.objects().size();
		try (TestDatabase empty = TestDatabase.empty()) {
			List<String> words = new ArrayList<>(List.of("restore", file.toString()));
			DatabaseLogin login = empty.owner();
			Map<String, String> options = new TreeMap<>(there.settings());
			options.put("spring.datasource.url", login.jdbcUrl());
			options.put("spring.datasource.username", login.user());
			options.put("spring.datasource.password", login.password());
			options.forEach((name, value) -> words.add("--" + name + "=" + value));
			assertThat(TestCommands.run(words.toArray(new String[0]))).isZero();
			JdbcClient restored = JdbcClient.create(login.dataSource());
			List<String> objects = restored.sql("select object from photo_body where photo = ?::uuid and body is null")
				.param(photo)
				.query(String.class)
				.list();
			assertThat(objects).hasSameSizeAs(objects(photo)).doesNotContainAnyElementsOf(objects(photo));
			assertThat(there.objects()).containsAll(objects).hasSize(2 * before);
			words.set(0, "verify");
			words.remove(1);
			assertThat(TestCommands.run(words.toArray(new String[0]))).isZero();
		}
	}

	@Test
	void nothingIsDeletedWhileAnArchiveIsWritten() throws Exception {
		String photo = sent();
		List<String> objects = objects(photo);
		try (Connection connection = this.database.getConnection()) {
			PicturesInUse.begin(connection);
			erase(photo);
			assertThat(this.deleting.run()).isZero();
			assertThat(there.objects()).containsAll(objects);
			PicturesInUse.end(connection);
		}
		assertThat(this.deleting.run()).isEqualTo(objects.size());
	}

	@Test
	void twoNodesShareTheStore() throws Exception {
		StoredPictures other = new StoredPictures(provider(otherStore()), this.jdbc, this.clock, this.transactions);
		DeleteObjects otherDeleting = new DeleteObjects(otherStore(), this.jdbc, this.clock, this.transactions);
		String photo = sent();
		List<String> objects = objects(photo);
		for (String object : objects) {
			assertThat(other.find(object, bytes("salt", object), bytes("digest", object)))
				.contains(Files.readAllBytes(there.file(object)));
		}
		erase(photo);
		CompletableFuture<Integer> one = CompletableFuture.supplyAsync(this.deleting::run);
		CompletableFuture<Integer> two = CompletableFuture.supplyAsync(otherDeleting::run);
		int together = one.join() + two.join();
		// Where both asked at once, one of them leaves it to the other.
		together += this.deleting.run();
		assertThat(together).isEqualTo(objects.size());
		assertThat(there.objects()).doesNotContainAnyElementsOf(objects);
	}

	private static ObjectStore otherStore() {
		Map<String, String> settings = there.settings();
		return ObjectStore.of(new StoreSettings(settings.get("registry.photos.store.bucket"),
				URI.create(settings.get("registry.photos.store.endpoint")), "us-east-1", TestObjectStore.PREFIX,
				"register", TestObjectStore.SECRET, true));
	}

	private static ObjectProvider<ObjectStore> provider(ObjectStore store) {
		return new ObjectProvider<>() {
			@Override
			public ObjectStore getObject() {
				return store;
			}

			@Override
			public ObjectStore getIfAvailable() {
				return store;
			}
		};
	}

	private String sent() throws Exception {
		return TestPhotos.sent(this.trees, photos(), this.tree.filer(), "credit", "A filer");
	}

	private String photos() {
		return "/api/v1/trees/" + this.tree.tree() + "/photos";
	}

	private ResultActions image(String photo, @Nullable TestPerson person) throws Exception {
		String address = "/api/v1/photos/" + photo + "/image";
		return (person != null) ? this.trees.ask(get(address), person) : this.mvc.perform(get(address));
	}

	private void erase(String photo) throws Exception {
		this.trees
			.ask(post("/api/v1/photos/" + photo + "/erasure").contentType(MediaType.APPLICATION_JSON), this.coordinator)
			.andExpect(status().isNoContent());
	}

	/** Lets the time pass in which what was put may be recorded. */
	private void sweep() {
		this.jdbc.sql("update unnamed_object set due_at = now() - interval '1 minute'").update();
		this.deleting.run();
	}

	private List<String> objects(String photo) {
		return this.jdbc
			.sql("select object from photo_body where photo = ?::uuid and object is not null order by width")
			.param(photo)
			.query(String.class)
			.list();
	}

	private byte[] bytes(String column, String object) {
		return this.jdbc.sql("select " + column + " from photo_body where object = ?")
			.param(object)
			.query((row, number) -> row.getBytes(1))
			.single();
	}

	private long count(String sql) {
		return this.jdbc.sql(sql).query(Long.class).single();
	}

	private List<String> findings() {
		List<String> found = new ArrayList<>();
		for (RegisterCheck check : this.checks) {
			if (check.subject().equals("photos")) {
				check.look(new Findings(1000, found::add, (looked) -> {
				}));
			}
		}
		return found;
	}

}
