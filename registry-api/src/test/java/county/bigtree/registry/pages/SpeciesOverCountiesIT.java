package county.bigtree.registry.pages;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A species in all counties: its champions side by side.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class SpeciesOverCountiesIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void showsThePresentChampionOfEachCounty() throws Exception {
		String page = page("/species/quercus-alba");
		String champion = this.jdbc
			.sql("""
					select t.tag from title_span s join tree t on t.id = s.tree
					where s.county = 'larkmere' and s.species = 'quercus-alba' and s.title = 'champion' and s.to_at is null""")
			.query(String.class)
			.single();
		assertThat(page).contains("/counties/larkmere/species/quercus-alba", "/counties/sedgeholt/species/quercus-alba",
				"/trees/" + champion, "class=\"small\"");
	}

	@Test
	void leavesCountiesForPracticeOut() throws Exception {
		String practised = this.jdbc.sql("""
				select species from book where trees > 0 and county = 'thistlecombe' limit 1""")
			.query(String.class)
			.single();
		assertThat(page("/species/" + practised)).doesNotContain("Thistlecombe", "/trees/TC-");
	}

	@Test
	void namesNoTreeThatItsOwnerHides() throws Exception {
		this.trees.county("plurality", "PLU");
		TestTrees.Filed filed = this.trees.standing("plurality", 999, "2024-05-01");
		String tag = this.jdbc.sql("select tag from tree where id = cast(? as uuid)")
			.param(filed.tree())
			.query(String.class)
			.single();
		assertThat(page("/species/quercus-alba")).contains(tag);
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/owners").content(
					"{\"name\": \"P. Holder\", \"contact\": \"by the pond\"}"), this.people.coordinator("plurality"))
			.andExpect(status().isCreated());
		assertThat(page("/species/quercus-alba")).contains("1089.00", "a tree not shown at its owner")
			.doesNotContain(tag, filed.tree());
	}

	@Test
	void saysWhatToDoWhereThereIsNoTreeYet() throws Exception {
		String none = this.jdbc.sql(
				"select key from species s where not genus_only and not exists (select from book where species = s.key) order by key limit 1")
			.query(String.class)
			.single();
		assertThat(page("/species/" + none)).contains("No tree of this species is ranked in any county yet")
			.doesNotContain("class=\"small\"");
	}

	@Test
	void isFoundBySearchAndFromACounty() throws Exception {
		assertThat(page("/?query=white oak")).contains("href=\"/species/quercus-alba\"");
		assertThat(page("/counties/larkmere/species/quercus-alba")).contains("href=\"/species/quercus-alba\"");
		this.mvc.perform(get("/species/no-such-tree").accept("text/html")).andExpect(status().isNotFound());
	}

	private String page(String address) throws Exception {
		String page = this.mvc.perform(get(address))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(page).doesNotContain("??");
		return page;
	}

}
