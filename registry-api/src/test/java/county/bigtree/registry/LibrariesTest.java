package county.bigtree.registry;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

/**
 * The bill of materials that is packed into the jar (CycloneDX) names exactly the
 * libraries and licences decided on, as {@code docs/libraries.txt} lists them: one that
 * comes along unseen fails.
 */
class LibrariesTest {

	/**
	 * Names as the bill has them. Those of choice stand beside others in one line; the
	 * four with LGPL alone are linked as libraries that anyone may replace.
	 */
	private static final Set<String> LICENCES = Set.of("0BSD", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause",
			"BSD-4-Clause", "Bouncy Castle Licence", "CC0-1.0", "EPL-2.0", "FreeBSD License",
			"GPL-2.0-with-classpath-exception", "LGPL-2.1-only", "LGPL-2.1-or-later", "MIT", "MIT-0", "SAX-PD",
			"The MIT License(MIT)", "The W3C License", "Unicode/ICU License");

	private static final Path DECIDED = Path.of("docs", "libraries.txt");

	@Test
	void areThoseDecidedOn() throws Exception {
		assertThat(packed()).containsExactlyElementsOf(Files.readAllLines(DECIDED));
	}

	@Test
	void areUnderLicencesThatLetAnyoneUseThem() throws Exception {
		assertThat(Files.readAllLines(DECIDED)
			.stream()
			.flatMap((line) -> List.of(line.split(" {2}", 2)[1].split(", ")).stream())
			.collect(Collectors.toSet())).isSubsetOf(LICENCES);
	}

	private static Set<String> packed() throws Exception {
		URI classes = RegistryApplication.class.getProtectionDomain().getCodeSource().getLocation().toURI();
		Path bill = Path.of(classes).resolve("META-INF/sbom/application.cdx.json");
		assumeTrue(Files.exists(bill), "Maven writes the bill of materials");
		Set<String> packed = new TreeSet<>();
		for (JsonNode library : read(bill).path("components")) {
			if (!library.path("group").stringValue("").equals("county.bigtree")) {
				packed.add("%s:%s:%s  %s".formatted(library.path("group").stringValue(""),
						library.path("name").stringValue(""), library.path("version").stringValue(""),
						licences(library)));
			}
		}
		return packed;
	}

	private static String licences(JsonNode library) {
		Set<String> names = new TreeSet<>();
		for (JsonNode one : library.path("licenses")) {
			JsonNode licence = one.path("license");
			names.add(licence.path("id")
				.stringValue(licence.path("name").stringValue(one.path("expression").stringValue(""))));
		}
		return String.join(", ", names);
	}

	private static JsonNode read(Path file) throws IOException {
		try (InputStream bytes = Files.newInputStream(file)) {
			return JsonMapper.shared().readTree(bytes);
		}
	}

}
