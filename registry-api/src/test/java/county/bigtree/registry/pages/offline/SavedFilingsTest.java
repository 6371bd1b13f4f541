package county.bigtree.registry.pages.offline;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

class SavedFilingsTest {

	private static final String ONE = """
			{"format": "big-tree-filings", "version": 1, "savedAt": "2026-05-02T18:00:00Z", "filings": [{"id": "k-1",
			"person": "p", "name": "A. Finder", "title": "File a tree: bur oak", "address": "%s", "madeAt": "2026-05-02T17:40:00Z",
			"entries": [["county", "larkmere"], ["_csrf", "x"], ["go", "file"], ["girth.girth", "12' 6\\""], ["declares", "a"],
			["declares", "b"]], "photos": [{"key": "f-1", "name": "oak.jpg", "shows": "whole", "mediaType": "%s", "base64": "%s"}]}]}""";

	@Test
	void readsWhatAPhoneSaved() {
		SavedFilings.Filing filing = read(ONE.formatted("/nominate", "image/jpeg", "/9j/")).orElseThrow()
			.filings()
			.get(0);
		assertThat(filing.name()).isEqualTo("A. Finder");
		assertThat(filing.entries()).extracting(SavedFilings.Entry::name)
			.containsExactly("county", "girth.girth", "declares", "declares");
		assertThat(filing.byName()).containsEntry("girth.girth", "12' 6\"").containsEntry("declares", "a");
		assertThat(filing.photos()).singleElement()
			.satisfies((photo) -> assertThat(photo.address()).isEqualTo("data:image/jpeg;base64,/9j/"));
	}

	@ParameterizedTest
	@ValueSource(
			strings = { "/nominate", "/remeasure", "/report", "/trees/LM-0042/remeasure", "/trees/LM-0042/report" })
	void knowsTheFormsInWhichACoordinatorFiles(String address) {
		assertThat(read(ONE.formatted(address, "image/png", "/9j/")).orElseThrow().filings().get(0).isForm()).isTrue();
	}

	@ParameterizedTest
	@ValueSource(strings = { "/measurements/1/sign-off", "/visits/1/outcome", "https://elsewhere.example/nominate",
			"//elsewhere.example/report", "/trees/../account/report", "/sign-out", "/nominate?x", "" })
	void leadsNowhereElse(String address) {
		assertThat(read(ONE.formatted(address, "image/png", "/9j/")).orElseThrow().filings().get(0).isForm()).isFalse();
	}

	@Test
	void passesOverWhatIsNoPicture() {
		assertThat(read(ONE.formatted("/nominate", "text/html", "/9j/")).orElseThrow().filings().get(0).photos())
			.isEmpty();
		assertThat(
				read(ONE.formatted("/nominate", "image/jpeg", "\\\" onerror")).orElseThrow().filings().get(0).photos())
			.isEmpty();
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "{", "[]", "null", "{}",
			"{\"format\": \"big-tree-filings\", \"version\": 2, \"filings\": []}",
			"{\"format\": \"big-tree-filings\", \"version\": 1}",
			"{\"format\": \"other\", \"version\": 1, \"filings\": []}", "[[[[[[[[[[[[1]]]]]]]]]]]]" })
	void refusesWhatIsNoSuchFile(String file) {
		assertThat(read(file)).isEmpty();
	}

	private static Optional<SavedFilings> read(String file) {
		return SavedFilings.read(file.getBytes(StandardCharsets.UTF_8));
	}

}
