package county.bigtree.registry.pages;

import java.util.List;

import county.bigtree.registry.RegistryTest;
import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.cookie;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Every public page, on the demo.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class PublicPagesIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void beginWithTheCounties() throws Exception {
		page("/").andExpect(content().string(containsString("/counties/larkmere")))
			.andExpect(content().string(containsString("Sedgeholt")));
	}

	@Test
	void showTheLeadersOfACounty() throws Exception {
		String species = this.jdbc
			.sql("select species from title_span where county = 'larkmere' and to_at is null limit 1")
			.query(String.class)
			.single();
		page("/counties/larkmere").andExpect(content().string(containsString("/counties/larkmere/species/" + species)));
	}

	@Test
	void showEverySpeciesAndItsTitles() throws Exception {
		List<String> species = this.jdbc.sql("select species from book where county = 'larkmere' and trees > 0")
			.query(String.class)
			.list();
		assertThat(species).hasSizeGreaterThan(20);
		for (String key : species) {
			page("/counties/larkmere/species/" + key).andExpect(content().string(containsString("/trees/")));
		}
	}

	@Test
	void callEachOfThoseWhoShareATitleCoChampion() throws Exception {
		List<String> sharing = this.jdbc
			.sql("""
					select t.tag from title_span s join tree t on t.id = s.tree where s.county = 'larkmere' and s.to_at is null
					  and is_listed(t.id, now()) and exists (select from title_span o where o.county = s.county
					    and o.species = s.species and o.to_at is null and o.title = 'co-champion')""")
			.query(String.class)
			.list();
		assertThat(sharing).hasSizeGreaterThan(1);
		for (String tag : sharing) {
			page("/trees/" + tag).andExpect(content().string(containsString("<strong>co-champion</strong>")));
		}
	}

	@Test
	void showEveryTreeOnTheBooksByItsTag() throws Exception {
		List<String> tags = this.jdbc
			.sql("""
					select tag from tree t where exists (select from acceptance where tree = t.id) and kept_tree(t.id) = t.id
					  and is_listed(t.id, now()) and not exists (select from taking_off where tree = t.id)
					  and county not in (select key from county where practice)""")
			.query(String.class)
			.list();
		assertThat(tags).hasSizeGreaterThan(100);
		for (String tag : tags) {
			page("/trees/" + tag).andExpect(content().string(containsString(tag)));
		}
		this.mvc.perform(get("/t/" + tags.get(0))).andExpect(redirectedUrl("/trees/" + tags.get(0)));
	}

	@Test
	void leadFromAMergedTreeToTheOneThatIsKept() throws Exception {
		String tag = this.jdbc.sql("""
				select tag from tree t where kept_tree(t.id) <> t.id
				  and exists (select from acceptance where tree = t.id) limit 1""").query(String.class).single();
		this.mvc.perform(get("/trees/" + tag)).andExpect(status().isFound());
	}

	@Test
	void findSpeciesCountiesAndTrees() throws Exception {
		// To the species in its one county, or over all that have it.
		page("/?query=white oak").andExpect(content().string(containsString("/species/quercus-alba\"")));
		page("/?query=larkm").andExpect(content().string(containsString("/counties/larkmere")));
		page("/?query=LM-0001").andExpect(content().string(containsString("/trees/LM-0001")));
		page("/?query=<b>nothing</b>").andExpect(content().string(containsString("&lt;b&gt;nothing&lt;/b&gt;")));
	}

	@Test
	void showOnlyTheSpeciesAskedFor() throws Exception {
		page("/counties/larkmere?name=white oak")
			.andExpect(content().string(containsString("/counties/larkmere/species/quercus-alba")))
			.andExpect(content().string(not(containsString("/counties/larkmere/species/quercus-rubra"))));
	}

	@Test
	void rememberTheUnitsAskedFor() throws Exception {
		page("/counties/larkmere/species/quercus-alba?units=metric")
			.andExpect(content().string(containsString("Girth, cm")))
			.andExpect(cookie().value("units", "metric"));
		this.mvc.perform(get("/counties/larkmere/species/quercus-alba").cookie(new Cookie("units", "metric")))
			.andExpect(content().string(containsString("Height, m")));
		page("/counties/larkmere/species/quercus-alba").andExpect(content().string(containsString("Height, ft")));
	}

	@Test
	void tellTheStoryOfASpeciesInOneClick() throws Exception {
		page("/counties/larkmere/species/quercus-alba")
			.andExpect(content().string(containsString("/counties/larkmere/species/quercus-alba/story")));
		page("/counties/larkmere/species/quercus-alba/story").andExpect(content().string(containsString("champion")));
	}

	@Test
	void showAStandingOfThePast() throws Exception {
		page("/counties/larkmere/species/quercus-alba?asOf=2023-05-01")
			.andExpect(content().string(containsString("This is the standing of 1 May 2023")));
	}

	@Test
	void leaveNoMessageUnsaid() throws Exception {
		for (String address : List.of("/", "/counties/larkmere", "/counties/larkmere/species/quercus-alba", "/cautions",
				"/problems", "/about", "/accessibility")) {
			page(address).andExpect(content().string(not(containsString("??"))));
		}
	}

	@Test
	void showNoTreeOfAPracticeCounty() throws Exception {
		String tag = this.jdbc.sql("""
				select tag from tree t where exists (select from acceptance where tree = t.id)
				  and county in (select key from county where practice) limit 1""").query(String.class).single();
		this.mvc.perform(get("/trees/" + tag)).andExpect(status().isNotFound());
	}

	@Test
	void sayTheCautions() throws Exception {
		page("/cautions").andExpect(content().string(containsString("Do not climb")));
	}

	private ResultActions page(String address) throws Exception {
		return this.mvc.perform(get(address))
			.andExpect(status().isOk())
			.andExpect(content().contentTypeCompatibleWith("text/html"));
	}

}
