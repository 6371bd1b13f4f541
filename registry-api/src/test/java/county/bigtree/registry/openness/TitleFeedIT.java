package county.bigtree.registry.openness;

import java.io.StringReader;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import com.rometools.rome.feed.synd.SyndEntry;
import com.rometools.rome.feed.synd.SyndFeed;
import com.rometools.rome.feed.synd.SyndLink;
import com.rometools.rome.io.SyndFeedInput;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.openness.TestOpenCounty.Planted;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * The feeds of title changes, as ROME reads them.
 */
@RegistryTest
class TitleFeedIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestOpenCounty counties;

	@Test
	void tellsEachChangeOnceNewestFirst() throws Exception {
		this.trees.county("feedland", "FEE");
		TestTrees.Filed first = this.trees.standing("feedland", 100, "2024-05-02");
		TestTrees.Filed second = this.trees.standing("feedland", 130, "2024-05-02");
		SyndFeed feed = feed("/counties/feedland/titles.atom");
		assertThat(feed.getFeedType()).isEqualTo("atom_1.0");
		assertThat(feed.getTitle()).isEqualTo("Title changes of feedland");
		assertThat(feed.getUri()).endsWith("/counties/feedland/titles.atom");
		assertThat(feed.getLinks().stream().map(SyndLink::getRel)).contains("self", "alternate");
		List<SyndEntry> entries = feed.getEntries();
		assertThat(entries.stream().map(SyndEntry::getTitle)).containsExactly(
				tag(second) + " became champion white oak of feedland",
				tag(first) + " is no longer champion white oak of feedland",
				tag(first) + " became champion white oak of feedland");
		assertThat(entries.get(1).getDescription().getValue()).contains("another tree overtook it", "Quercus alba",
				"190.00");
		assertThat(entries).allSatisfy((entry) -> {
			assertThat(entry.getUri()).startsWith("urn:uuid:");
			assertThat(entry.getUpdatedDate()).isNotNull();
			assertThat(entry.getLink()).endsWith("/counties/feedland/species/quercus-alba");
		});
		assertThat(entries.stream().map(SyndEntry::getUri)).doesNotHaveDuplicates();
		assertThat(entries).isSortedAccordingTo((one, other) -> other.getUpdatedDate().compareTo(one.getUpdatedDate()));
		assertThat(feed("/titles.atom").getEntries().stream().map(SyndEntry::getUri))
			.containsAll(entries.stream().map(SyndEntry::getUri).toList());
	}

	@Test
	void anEntryKeepsItsIdAndNoLongerNamesATreeThatIsNotListed() throws Exception {
		Planted planted = this.counties.found("feedhush", "FEH");
		SyndEntry before = feed("/counties/feedhush/titles.atom").getEntries().get(0);
		assertThat(before.getTitle())
			.isEqualTo("a tree not shown at its owner's wish became champion white oak of feedhush");
		this.trees.standing("feedhush", 150, "2024-05-02");
		List<SyndEntry> after = feed("/counties/feedhush/titles.atom").getEntries();
		assertThat(after).hasSize(3);
		assertThat(after.get(2).getUri()).isEqualTo(before.getUri());
		assertThat(this.counties.read("/counties/feedhush/titles.atom")).doesNotContain(planted.unlisted().tag(),
				planted.unlisted().id());
	}

	@Test
	void aCountyForPracticeHasNone() throws Exception {
		this.trees.practiceCounty("feedpractice", "FEQ");
		this.trees.standing("feedpractice", 100, "2024-05-02");
		this.mvc.perform(get("/counties/feedpractice/titles.atom")).andExpect(status().isNotFound());
		this.mvc.perform(get("/titles.atom")).andExpect(content().string(not(containsString("feedpractice"))));
		this.mvc.perform(get("/titles.atom?page=0")).andExpect(status().isBadRequest());
	}

	@Test
	void pagesNameTheirFeedInTheHead() throws Exception {
		this.trees.county("feedhead", "FEG");
		this.trees.standing("feedhead", 100, "2024-05-02");
		String alternate = "rel=\"alternate\" type=\"application/atom+xml\" href=\"%s\"";
		this.mvc.perform(get("/")).andExpect(content().string(containsString(alternate.formatted("/titles.atom"))));
		for (String page : List.of("/counties/feedhead", "/counties/feedhead/species/quercus-alba")) {
			this.mvc.perform(get(page))
				.andExpect(content().string(containsString(alternate.formatted("/counties/feedhead/titles.atom"))))
				.andExpect(content().string(containsString("/exports/feedhead/standings.csv")));
		}
	}

	private SyndFeed feed(String address) throws Exception {
		return new SyndFeedInput().build(new StringReader(this.counties.read(address)));
	}

	private String tag(TestTrees.Filed filed) throws Exception {
		return JsonPath.read(this.counties.read("/api/v1/trees/" + filed.tree()), "$.tag");
	}

}
