package county.bigtree.registry.demo;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.review.NominationMove;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.measurement.MeasurementMove;
import county.bigtree.registry.photo.Decision;
import county.bigtree.registry.story.FactKind;
import county.bigtree.registry.visit.VisitOutcome;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.ClassPathResource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The demo tells of every kind of fact and of every kind of change, but for those listed
 * here with the reason why it can't. A kind that is new, and that the demo doesn't tell,
 * fails here.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class DemoTellsAllIT {

	/** What is recorded later is other tests' doing: they share the demo. */
	private static final Instant BEGINNING = Instant.ofEpochMilli(ManagementFactory.getRuntimeMXBean().getStartTime());

	private static final Map<String, String> CHANGES_NOT_TOLD = Map.of("reduced-again",
			"comes of a formula mended since the reading was filed, and all of the demo is worked out by today's",
			"nomination-accept", "goes with the sign-off that accepts");

	private static final Map<FactKind, String> FACTS_NOT_TOLD = Map.of(FactKind.REDUCED_AGAIN,
			"comes of a formula mended since", FactKind.RULEBOOK_IN_FORCE,
			"is no fact, but told where a day came on which rules hold");

	/** Where a kind is made of a word and the code of a move or an outcome. */
	private static final Map<String, List<String>> MADE_OF = Map.of("nomination-",
			codes(NominationMove.values(), NominationMove::code), "measurement-",
			codes(MeasurementMove.values(), MeasurementMove::code), "visit-",
			codes(VisitOutcome.values(), VisitOutcome::code), "photo-", codes(Decision.values(), Decision::word));

	/**
	 * What is handed on as the kind of a change, which was named by whoever called; a
	 * constant; and rows and imports that are closed, which are no changes.
	 */
	private static final Set<String> NO_WORDS = Set.of("kind", "Mended.KIND", "job", "closing.row()");

	private static final Pattern CLOSE = Pattern.compile("\\bclose\\(\\s*\\w*[cC]hange,\\s*([^;]+);");

	private static final Pattern WORD = Pattern.compile("\"([a-z-]+)\"");

	/** Everything as it is told to an insider of all counties. */
	private static final String OF_ALL = """
			with stay as (
			  select id as tree, cast('-infinity' as timestamptz) as from_at, cast('infinity' as timestamptz) as to_at from tree
			), whole as (
			  select county, species from book
			), turn as (
			  select null as county, null as species, cast(null as timestamptz) as at where false
			)""";

	@Autowired
	private JdbcClient jdbc;

	@Test
	void hasAFactOfEveryTable() {
		assertThat(FactTable.values())
			.allSatisfy((table) -> assertThat(count("select count(*) from " + table.name().toLowerCase(Locale.ROOT)))
				.as(table.name())
				.isPositive());
	}

	@Test
	void hasAChangeOfEveryKindThatTheSourcesName() throws IOException {
		Set<String> told = new TreeSet<>(this.jdbc.sql("select distinct kind from change").query(String.class).list());
		told.addAll(CHANGES_NOT_TOLD.keySet());
		assertThat(told).containsAll(kindsInTheSources());
	}

	@Test
	void listsNoExceptionThatIsToldAfterAll() {
		assertThat(this.jdbc.sql("select distinct kind from change").query(String.class).list())
			.doesNotContainAnyElementsOf(CHANGES_NOT_TOLD.keySet());
		assertThat(kindsTold())
			.doesNotContainAnyElementsOf(FACTS_NOT_TOLD.keySet().stream().map(FactKind::code).toList());
	}

	@Test
	void tellsEveryKindOfFactInItsStories() {
		Set<String> told = new TreeSet<>(kindsTold());
		FACTS_NOT_TOLD.keySet().forEach((kind) -> told.add(kind.code()));
		assertThat(told).containsExactlyInAnyOrderElementsOf(codes(FactKind.values(), FactKind::code));
	}

	/**
	 * What a coordinator finds on the desk today.
	 */
	@Test
	void leavesEachKindOfWorkOpen() {
		assertThat(count("select count(*) from nomination where status in ('submitted', 'under-review', 'returned')"))
			.isGreaterThanOrEqualTo(8);
		assertThat(
				count("""
						select count(*) from sign_off_deferral d where not exists (select from sign_off_assent where sign_off = d.sign_off)
						  and sign_off_waits(d.sign_off)"""))
			.isGreaterThanOrEqualTo(2);
		assertThat(count("select count(*) from letter where id not in (select letter from letter_outcome)"))
			.isEqualTo(3);
		assertThat(count("""
				select count(distinct verifier) from visit
				where id not in (select visit from visit_outcome where recorded_at < '%s')""".formatted(BEGINNING)))
			.isEqualTo(2);
		assertThat(count("select count(*) from consent where until_on between current_date and current_date + 30"))
			.isOne();
		assertThat(count("select count(*) from import_rejection")).isPositive();
		assertThat(count("select count(*) from import_waiting")).isPositive();
		assertThat(count("""
				select count(*) from relocation_proposal where id not in (select proposal from relocation_answer)"""))
			.isOne();
	}

	private Set<String> kindsTold() {
		return new HashSet<>(this.jdbc.sql(OF_ALL + factsSql() + "select distinct kind from told")
			.param("insider", "larkmere,sedgeholt,thistlecombe")
			.param("asker", null, java.sql.Types.OTHER)
			.param("after", java.time.OffsetDateTime.parse("1900-01-01T00:00:00Z"))
			.param("until", java.time.OffsetDateTime.parse("9999-12-31T00:00:00Z"))
			.query(String.class)
			.list());
	}

	private static String factsSql() {
		try {
			return new ClassPathResource("/story/facts.sql").getContentAsString(StandardCharsets.UTF_8);
		}
		catch (IOException ex) {
			throw new java.io.UncheckedIOException(ex);
		}
	}

	private static Set<String> kindsInTheSources() throws IOException {
		Set<String> kinds = new TreeSet<>();
		try (Stream<Path> files = Files.walk(Path.of("src", "main", "java"))) {
			for (Path file : files.filter((one) -> one.toString().endsWith(".java")).toList()) {
				Matcher close = CLOSE.matcher(Files.readString(file));
				while (close.find()) {
					kinds.addAll(kinds(file, close.group(1).split(",")[0].strip()));
				}
			}
		}
		assertThat(kinds).hasSizeGreaterThan(40);
		return kinds;
	}

	/** The kinds that the expression can be. */
	private static List<String> kinds(Path file, String expression) {
		List<String> words = WORD.matcher(expression).results().map((word) -> word.group(1)).toList();
		if (words.isEmpty()) {
			assertThat(NO_WORDS).as("%s closes a change as %s, which names no kind", file, expression)
				.contains(expression);
			return List.of();
		}
		return words.stream()
			.flatMap((word) -> word.endsWith("-")
					? MADE_OF.getOrDefault(word, List.of("")).stream().map((code) -> word + code) : Stream.of(word))
			.toList();
	}

	private long count(String sql) {
		return this.jdbc.sql(sql).query(Long.class).single();
	}

	private static <T> List<String> codes(T[] values, Function<T, String> code) {
		return Arrays.stream(values).map(code).collect(Collectors.toList());
	}

}
