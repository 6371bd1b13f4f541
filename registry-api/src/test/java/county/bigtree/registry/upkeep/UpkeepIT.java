package county.bigtree.registry.upkeep;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.archive.ArchiveRegister;
import county.bigtree.registry.audit.VerifyRegister;
import county.bigtree.registry.database.OwnFolder;
import county.bigtree.registry.erasure.ErasureList;
import county.bigtree.registry.notice.StuckNotices;
import county.bigtree.registry.pages.TestPages;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What is done by the clock, once a day whoever comes first, and what administrators hear
 * of what fails. No outside source: the days and hours are our own choice.
 */
@RegistryTest
class UpkeepIT {

	/** A Monday. */
	private static final LocalDate DAY = LocalDate.of(2091, 1, 1);

	@Autowired
	private ArchiveRegister archiveRegister;

	@Autowired
	private ErasureList erasures;

	@Autowired
	private Recording recording;

	@Autowired
	private UpkeepRuns runs;

	@Autowired
	private Troubles troubles;

	@Autowired
	private StuckNotices stuck;

	@Autowired
	private WeeklyWord weekly;

	@Autowired
	private WeekInLines lines;

	@Autowired
	private ObjectProvider<OwnFolder> own;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestPages pages;

	@Autowired
	private JdbcClient jdbc;

	@TempDir
	@SuppressWarnings("NullAway.Init")
	private Path folder;

	@BeforeEach
	void forget() {
		this.jdbc.sql("delete from upkeep_run").update();
		this.jdbc.sql("delete from upkeep_trouble").update();
	}

	@Test
	void takesOneArchiveADayAndTheListOfWhatWasErased() throws Exception {
		TakeArchive archives = archives(this.folder.resolve("a/rchives"), 14);
		archives.run(DAY);
		archives.run(DAY);
		List<Path> files = new ArchiveFolder(this.folder.resolve("a/rchives")).files();
		assertThat(files).hasSize(1);
		assertThat(Files.readAllLines(files.get(0).resolveSibling(TakeArchive.ERASED)).get(0))
			.isEqualTo("what,id,erased_at");
		assertThat(Files.getPosixFilePermissions(files.get(0).getParent())).hasSize(3);
		UpkeepRun run = this.runs.lastWell(UpkeepRun.ARCHIVE).orElseThrow();
		assertThat(run.dueOn()).isEqualTo(DAY);
		assertThat(run.bytes()).isEqualTo(Files.size(files.get(0)));
		assertThat(this.troubles.open()).isEmpty();
	}

	@Test
	void keepsTheNewestAndWhatIsNotItsOwn() throws Exception {
		for (String name : List.of("daily-20260101T010000Z.tar.gz", "daily-20260102T010000Z.tar.gz", "ours.tar.gz",
				"before-migration-20200101T010000Z.tar.gz")) {
			Files.createFile(this.folder.resolve(name));
		}
		archives(this.folder, 2).run(DAY);
		assertThat(this.folder.toFile().list()).hasSize(5)
			.contains("daily-20260102T010000Z.tar.gz", "ours.tar.gz", "before-migration-20200101T010000Z.tar.gz",
					TakeArchive.ERASED)
			.doesNotContain("daily-20260101T010000Z.tar.gz");
	}

	@Test
	void tellsAdministratorsOnceThatAnArchiveFailedAndTriesAgainHoursLater() throws Exception {
		TestPerson administrator = this.people.administrator();
		Path taken = Files.createFile(this.folder.resolve("no-folder"));
		archives(taken, 14).run(DAY);
		assertThat(this.troubles.open()).singleElement()
			.satisfies((trouble) -> assertThat(trouble.kind()).isEqualTo("archive-failed"));
		archives(this.folder, 14).run(DAY);
		assertThat(this.runs.lastWell(UpkeepRun.ARCHIVE)).isEmpty();
		this.jdbc.sql(
				"update upkeep_run set ended_at = ended_at - interval '4 hours', began_at = began_at - interval '4 hours'")
			.update();
		archives(taken, 14).run(DAY);
		assertThat(titles(administrator)).containsExactly("The register: an archive could not be taken");
		this.jdbc.sql("update upkeep_run set ended_at = ended_at - interval '4 hours'").update();
		archives(this.folder, 14).run(DAY);
		assertThat(this.troubles.open()).isEmpty();
		assertThat(titles(this.people.coordinator(county("upkeepland", "UPK")))).isEmpty();
	}

	@Test
	void saysWhenTheRegisterIsNotWhole() throws Exception {
		VerifyRegister found = mock(VerifyRegister.class);
		when(found.look(any())).thenReturn(3L, 0L).thenThrow(new IllegalStateException("no connection"));
		LookWhole look = new LookWhole(found, new UpkeepSettings(1, true, 85), this.recording);
		look.run(DAY);
		look.run(DAY);
		assertThat(this.troubles.open()).singleElement()
			.satisfies((trouble) -> assertThat(trouble.kind()).isEqualTo("not-whole"));
		assertThat(this.runs.newest(1).get(0).outcome()).isEqualTo("not-well");
		look.run(DAY.plusDays(1));
		assertThat(this.troubles.open()).isEmpty();
		look.run(DAY.plusDays(2));
		assertThat(this.troubles.open()).singleElement()
			.satisfies((trouble) -> assertThat(trouble.kind()).isEqualTo("verify-failed"));
		new LookWhole(found, new UpkeepSettings(1, false, 85), this.recording).run(DAY.plusDays(3));
		assertThat(this.runs.newest(9)).hasSize(3);
	}

	@Test
	void noticesADiskThatFillsUp() {
		Instant now = Instant.parse("2091-01-01T12:00:00Z");
		watch(1, null).look(now);
		watch(1, null).look(now);
		assertThat(this.troubles.open()).singleElement().satisfies((trouble) -> {
			assertThat(trouble.kind()).isEqualTo("disk-full");
			assertThat(trouble.place()).endsWith(" " + this.folder);
		});
		// What Files.getFileStore says of a disk that is not full to the last byte.
		watch(100, null).look(now);
		assertThat(this.troubles.open()).isEmpty();
	}

	@Test
	void forgetsADiskOfWhichNobodyTellsAnyMore() {
		this.troubles.found(TroubleKind.DISK_FULL, "gone /srv", "99 %");
		this.jdbc.sql("update upkeep_trouble set seen_at = seen_at - interval '61 minutes'").update();
		watch(100, null).look(Instant.parse("2091-01-01T12:00:00Z"));
		assertThat(this.troubles.open()).isEmpty();
	}

	@Test
	void noticesThatNoArchiveIsTaken() {
		Instant now = Instant.parse("2091-01-01T12:00:00Z");
		WatchOver watch = watch(100, archives(this.folder, 14));
		watch.look(now);
		watch.look(now.plus(Duration.ofHours(49)));
		assertThat(this.troubles.open()).isEmpty();
		watch.look(now.plus(Duration.ofHours(51)));
		assertThat(this.troubles.open()).singleElement()
			.satisfies((trouble) -> assertThat(trouble.kind()).isEqualTo("archive-missing"));
		archives(this.folder, 14).run(DAY);
		assertThat(this.troubles.open()).isEmpty();
	}

	@Test
	void noticesARunThatNeverEnded() {
		this.runs.begin(UpkeepRun.TRIAL, DAY);
		watch(100, null).look(Instant.parse("2091-01-01T12:00:00Z"));
		assertThat(this.troubles.open()).isEmpty();
		this.jdbc.sql("update upkeep_run set began_at = began_at - interval '7 hours'").update();
		watch(100, null).look(Instant.parse("2091-01-01T12:00:00Z"));
		assertThat(this.troubles.open()).singleElement()
			.satisfies((trouble) -> assertThat(trouble.kind()).isEqualTo("trial-failed"));
		assertThat(this.runs.begin(UpkeepRun.TRIAL, DAY)).isPresent();
	}

	@Test
	void saysOnceAWeekWhetherAllIsWell() throws Exception {
		TestPerson administrator = this.people.administrator();
		assertThat(this.weekly.say(Instant.parse("2091-01-01T05:59:59Z"))).isZero();
		assertThat(this.weekly.say(Instant.parse("2091-01-01T06:00:00Z"))).isPositive();
		assertThat(this.weekly.say(Instant.parse("2091-01-03T06:00:00Z"))).isZero();
		this.troubles.found(TroubleKind.DISK_FULL, "here /srv", "91 %");
		assertThat(this.weekly.say(Instant.parse("2091-01-08T07:00:00Z"))).isPositive();
		assertThat(titles(administrator)).containsExactlyInAnyOrder("The register: all is well",
				"The register: a disk is nearly full", "The register: not all is well");
		assertThat(this.lines.ofTheWeek()).hasSize(4)
			.anyMatch((line) -> line.startsWith("A disk is nearly full, since "))
			.contains("No archive was taken yet.");
	}

	@Test
	void isToldToAdministratorsOverHttpAndOnTheirPage() throws Exception {
		TestPerson administrator = this.people.administrator();
		archives(this.folder, 14).run(DAY);
		this.troubles.found(TroubleKind.DISK_FULL, "here /srv", "91 %");
		this.trees.ask(get("/api/v1/upkeep"), administrator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.troubles[0].kind").value("disk-full"))
			.andExpect(jsonPath("$.runs[0].outcome").value("well"))
			.andExpect(jsonPath("$.archiving").value(false));
		TestPages.Visitor visitor = this.pages.signIn(administrator);
		assertThat(visitor.open("/desk/upkeep")).contains("A disk is nearly full", "here /srv", "91 %",
				"Archive of everything", ".tar.gz");
		assertThat(visitor.open("/desk")).contains("Something is wrong with how the register is kept");
		assertThat(visitor.open("/mine")).contains("The register: a disk is nearly full");
	}

	private String county(String key, String prefix) throws Exception {
		this.trees.county(key, prefix);
		return key;
	}

	private List<String> titles(TestPerson person) throws Exception {
		String notices = this.trees.ask(get("/api/v1/people/me/notices"), person)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		return JsonPath.read(notices, "$.items[*].title");
	}

	private TakeArchive archives(Path folder, int keep) {
		return new TakeArchive(this.archiveRegister, this.erasures, new ArchiveFolder(folder),
				new ArchiveSettings(folder, keep, true, true, true), this.recording);
	}

	private WatchOver watch(int percent, @Nullable TakeArchive archives) {
		ArchiveFolder watched = new ArchiveFolder(this.folder);
		TakeArchive taking = Objects.requireNonNullElseGet(archives, () -> new TakeArchive(this.archiveRegister,
				this.erasures, watched, new ArchiveSettings(this.folder, 1, false, false, false), this.recording));
		return new WatchOver(this.troubles, this.runs, taking, this.stuck,
				new WatchedDisks(this.own, watched, new UpkeepSettings(1, true, percent)));
	}

}
