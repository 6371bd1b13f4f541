package county.bigtree.registry.story;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.ClassPathResource;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Stories of the demo compared with those that were read and found right. The demo's days
 * lie a number of days before the present one, so they are compared by their distance
 * from the first day of the story; those on which time alone changed something, some
 * years after another, lie one leap day more or less from it, and are left out. Where the
 * demo itself is changed, read what the test leaves in {@code target/stories}, and put it
 * in the place of what it was compared with.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class DemoStoriesIT {

	private static final Pattern DAY = Pattern.compile("\\b\\d{1,2} [A-Z][a-z]+ (19|20)\\d{2}\\b");

	private static final DateTimeFormatter READ = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

	@Autowired
	private MockMvc mvc;

	@ParameterizedTest
	@CsvSource({ "trees/LM-0003, lm-0003", "trees/LM-0013, lm-0013", "trees/LM-0028, lm-0028",
			"counties/larkmere/species/juglans-nigra, larkmere-juglans-nigra",
			"counties/larkmere/species/quercus-shumardii, larkmere-quercus-shumardii",
			"counties/sedgeholt/species/acer-saccharinum, sedgeholt-acer-saccharinum" })
	void isTheStoryThatWasFoundRight(String address, String name) throws Exception {
		String story = this.mvc.perform(get("/api/v1/" + address + "/story").param("limit", "500"))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String told = withoutDays(story);
		Path file = Files.createDirectories(Path.of("target", "stories")).resolve(name + ".txt");
		Files.writeString(file, told);
		assertThat(told).as("the story in %s", file).isEqualTo(foundRight(name));
	}

	private static String withoutDays(String story) {
		List<String> days = JsonPath.read(story, "$.items[*].day");
		List<@Nullable String> people = JsonPath.read(story, "$.items[*].by");
		List<String> sentences = JsonPath.read(story, "$.items[*].sentence");
		LocalDate first = LocalDate.parse(days.get(0));
		Map<LocalDate, String> written = new HashMap<>();
		for (int at = 0; at < days.size(); at++) {
			if (people.get(at) == null) {
				written.put(LocalDate.parse(days.get(at)), "day *");
			}
		}
		Function<LocalDate, String> writing = (day) -> written.getOrDefault(day,
				"day " + ChronoUnit.DAYS.between(first, day));
		StringBuilder told = new StringBuilder(rewritten(JsonPath.read(story, "$.headline"), writing)).append("\n\n");
		for (int at = 0; at < days.size(); at++) {
			told.append(writing.apply(LocalDate.parse(days.get(at))))
				.append(": ")
				.append(rewritten(sentences.get(at), writing))
				.append('\n');
		}
		return told.toString();
	}

	private static String rewritten(String sentence, Function<LocalDate, String> writing) {
		return DAY.matcher(sentence).replaceAll((day) -> writing.apply(LocalDate.parse(day.group(), READ)));
	}

	private static String foundRight(String name) {
		try {
			return new ClassPathResource("/county/bigtree/registry/story/" + name + ".txt")
				.getContentAsString(StandardCharsets.UTF_8);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
