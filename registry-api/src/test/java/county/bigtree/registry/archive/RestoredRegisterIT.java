package county.bigtree.registry.archive;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

import county.bigtree.registry.RegistryApplication;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.erasure.EraseAgain;
import county.bigtree.registry.erasure.ErasureList;
import county.bigtree.registry.erasure.ErasureList.Erased;
import county.bigtree.registry.erasure.ErasureList.What;
import county.bigtree.registry.journal.SealJournal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Actors;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.standing.KeepWitnesses;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The demo's register archived, restored into another database and served from there:
 * whoever reads, gets the same bytes from both. {@code -Dregistry.archive.reads=N} reads
 * N trees, photos and so on at each address, and not only some.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class RestoredRegisterIT {

	/**
	 * Of each address many can fill, whoever has no county's work reads one in so many.
	 */
	private static final int SAMPLE = 11;

	private static final Pattern INSTANT = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(?:\\.\\d+)?Z");

	private final HttpClient http = HttpClient.newHttpClient();

	@LocalServerPort
	private int port;

	@Autowired
	private Environment environment;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private ArchiveRegister archiveRegister;

	@Autowired
	private TestPeople people;

	@Autowired
	private SealJournal seals;

	@Autowired
	private KeepWitnesses witnesses;

	@Autowired
	private JsonMapper json;

	@Test
	void aRestoredRegisterAnswersTheSame(@TempDir Path folder) throws Exception {
		this.seals.seal();
		this.witnesses.counties().forEach((county) -> this.witnesses.keep(county, LocalDate.EPOCH));
		ArchiveManifest written = this.archiveRegister.archive(folder.resolve("demo.tar.gz"), SmallRegister.SILENT);
		assertThat(written.pictures()).isPositive();
		try (SmallRegister target = SmallRegister.unused()) {
			target.restore(folder.resolve("demo.tar.gz"));
			ArchiveManifest again = target.archive(folder.resolve("again.tar.gz"));
			assertThat(withoutHead(again)).isEqualTo(withoutHead(written));
			try (ConfigurableApplicationContext service = serve(target)) {
				assertThat(verify(service)).isEmpty();
				compareReads(service);
				eraseAgain(service, folder);
			}
		}
	}

	private void compareReads(ConfigurableApplicationContext restored) throws IOException, InterruptedException {
		int other = restored.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
		List<String> addresses = new AllReads(this.jdbc,
				this.json.readTree(get(this.port, "/openapi.json", null).body()),
				Integer.getInteger("registry.archive.reads", 12))
			.addresses();
		Instant since = Instant.now();
		Map<String, Integer> answers = new TreeMap<>();
		List<String> otherwise = new ArrayList<>();
		for (Map.Entry<String, @Nullable UUID> asker : askers().entrySet()) {
			String here = token(this.people, asker.getValue());
			String there = token(restored.getBean(TestPeople.class), asker.getValue());
			int step = asker.getKey().equals("coordinator") ? 1 : SAMPLE;
			for (int i = 0; i < addresses.size(); i += step) {
				String address = addresses.get(i);
				HttpResponse<byte[]> first = get(this.port, address, here);
				HttpResponse<byte[]> second = get(other, address, there);
				answers.merge(asker.getKey() + " " + first.statusCode(), 1, Integer::sum);
				String difference = difference(first, second, since);
				if (difference != null) {
					otherwise.add(asker.getKey() + " GET " + address + ": " + difference);
				}
			}
		}
		System.out.println("Answers compared: " + answers);
		assertThat(otherwise).isEmpty();
		assertThat(answers.get("coordinator 200")).isGreaterThan(100);
		assertThat(answers.get("nobody 200")).isGreaterThan(5);
		assertThat(answers).doesNotContainKey("coordinator 400").doesNotContainKey("coordinator 500");
	}

	/**
	 * As if all three had been erased after the archive was taken.
	 */
	private void eraseAgain(ConfigurableApplicationContext restored, Path folder) throws IOException {
		JdbcClient there = restored.getBean(JdbcClient.class);
		UUID person = one(there, "select id from person where email = 'second-volunteer@demo.example'");
		UUID photo = one(there, "select photo from photo_body order by photo desc limit 1");
		UUID owner = one(there, "select o.name from tree_owner o join text_body b on b.id = o.name order by 1 limit 1");
		Path list = Files.writeString(folder.resolve("erased.csv"),
				"what,id,erased_at\r\nwords,%s,\r\nphoto,%s,\r\nperson,%s,\r\nphoto,%s,\r\n".formatted(owner, photo,
						person, UUID.randomUUID()));
		Actor administrator = restored.getBean(Actors.class)
			.get(one(there, "select id from person where email = 'admin@demo.example'"));
		EraseAgain again = restored.getBean(EraseAgain.class);
		assertThat(again.erase(ErasureList.read(list), administrator)).isEqualTo(3);
		assertThat(again.erase(ErasureList.read(list), administrator)).isZero();
		assertThat(again.importsToErase(ErasureList.read(list))).isEmpty();
		Path newer = folder.resolve("newer.csv");
		restored.getBean(ErasureList.class).write(newer);
		assertThat(ErasureList.read(newer)).contains(new Erased(What.WORDS, owner), new Erased(What.PHOTO, photo),
				new Erased(What.PERSON, person));
		assertThat(there.sql("""
				select count(*) from text_body b join text_piece p on p.id = b.id
				join change c on c.county = p.county and c.seq = p.seq where c.actor = ?""")
			.param(person)
			.query(Long.class)
			.single()).isZero();
		assertThat(verify(restored)).isEmpty();
	}

	private static UUID one(JdbcClient jdbc, String query) {
		return jdbc.sql(query).query(UUID.class).single();
	}

	/**
	 * Where an answer says when and where it was given, that is taken out, and its ETag
	 * is not compared.
	 */
	private static @Nullable String difference(HttpResponse<byte[]> first, HttpResponse<byte[]> second, Instant since)
			throws IOException {
		if (first.statusCode() != second.statusCode()) {
			return first.statusCode() + " and " + second.statusCode();
		}
		byte[] one = timeless(first, since);
		byte[] other = timeless(second, since);
		int at = Arrays.mismatch(one, other);
		if (at >= 0) {
			return "from " + at + ": " + around(one, at) + " and " + around(other, at);
		}
		boolean timeless = Arrays.equals(one, first.body());
		for (String header : List.of("Content-Type", "Cache-Control", "Link", timeless ? "ETag" : "Vary")) {
			if (!first.headers().allValues(header).equals(second.headers().allValues(header))) {
				return header + " " + first.headers().allValues(header) + " and " + second.headers().allValues(header);
			}
		}
		return null;
	}

	private static byte[] timeless(HttpResponse<byte[]> answer, Instant since) throws IOException {
		boolean packed = answer.headers().firstValue("Content-Type").orElse("").startsWith("application/zip");
		byte[] body = packed ? unpacked(answer.body()) : answer.body();
		String placeless = new String(body, StandardCharsets.ISO_8859_1)
			.replace("http://127.0.0.1:" + answer.uri().getPort(), "here")
			.replaceAll("name=\"_csrf\" value=\"[^\"]*\"", "for this page alone")
			.replaceAll("\"request\":\"[^\"]*\"", "the name of this request");
		return INSTANT.matcher(placeless)
			.replaceAll((found) -> Instant.parse(found.group()).isBefore(since) ? found.group() : "while reading")
			.getBytes(StandardCharsets.ISO_8859_1);
	}

	private static byte[] unpacked(byte[] packed) throws IOException {
		ByteArrayOutputStream all = new ByteArrayOutputStream();
		try (ZipInputStream files = new ZipInputStream(new ByteArrayInputStream(packed))) {
			for (ZipEntry file = files.getNextEntry(); file != null; file = files.getNextEntry()) {
				all.writeBytes(file.getName().getBytes(StandardCharsets.UTF_8));
				files.transferTo(all);
			}
		}
		return all.toByteArray();
	}

	private static String around(byte[] body, int at) {
		int from = Math.max(0, at - 60);
		return new String(body, from, Math.min(body.length, at + 60) - from, StandardCharsets.UTF_8);
	}

	private Map<String, @Nullable UUID> askers() {
		Map<String, @Nullable UUID> askers = new LinkedHashMap<>();
		for (String name : List.of("coordinator", "other-coordinator", "verifier", "volunteer", "admin")) {
			askers.put(name,
					this.jdbc.sql("select id from person where email = ?")
						.param(name + "@demo.example")
						.query(UUID.class)
						.single());
		}
		askers.put("nobody", null);
		return askers;
	}

	private static @Nullable String token(TestPeople people, @Nullable UUID person) {
		return (person != null) ? people.known(person).bearer() : null;
	}

	private HttpResponse<byte[]> get(int at, String address, @Nullable String authorization)
			throws IOException, InterruptedException {
		HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + at + address))
			.header("Accept", address.startsWith("/api/") ? "*/*" : "text/html, */*");
		if (authorization != null) {
			request.header("Authorization", authorization);
		}
		return this.http.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
	}

	/** As at the next start: with the migrations on, which find nothing to do. */
	private ConfigurableApplicationContext serve(SmallRegister register) {
		List<String> options = new ArrayList<>(List.of("--server.port=0", "--registry.demo=true",
				"--registry.limits.network-per-second=0", "--registry.limits.account-per-second=0",
				"--spring.datasource.url=" + register.database().service().jdbcUrl(),
				"--spring.datasource.username=" + register.database().service().user(),
				"--spring.datasource.password=" + register.database().service().password(),
				"--spring.flyway.user=" + register.database().owner().user(),
				"--spring.flyway.password=" + register.database().owner().password()));
		assertThat(this.environment.getProperty("spring.datasource.url"))
			.isNotEqualTo(register.database().service().jdbcUrl());
		return new SpringApplicationBuilder(RegistryApplication.class).run(options.toArray(String[]::new));
	}

	private static List<String> verify(ConfigurableApplicationContext service) {
		List<String> found = new ArrayList<>();
		for (RegisterCheck check : service.getBeansOfType(RegisterCheck.class).values()) {
			Findings findings = new Findings(100, found::add, (looked) -> {
			});
			check.look(findings);
			assertThat(findings.lookedAt()).as(check.subject()).isPositive();
		}
		return found;
	}

	private static List<ArchiveManifest.Group> withoutHead(ArchiveManifest manifest) {
		return manifest.groups().stream().filter((group) -> !group.path().equals(ArchiveFormat.HEAD)).toList();
	}

}
