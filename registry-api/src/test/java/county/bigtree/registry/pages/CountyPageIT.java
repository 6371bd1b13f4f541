package county.bigtree.registry.pages;

import java.util.List;
import java.util.regex.Pattern;

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
 * A county's page: its filters, its pages, and the map that shows no more than may be
 * shown.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class CountyPageIT {

	private static final Pattern ROW = Pattern.compile("<th scope=\"row\">");

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void drawsEachLeaderWhereItMayBeSeen() throws Exception {
		String page = page("/counties/larkmere");
		assertThat(page).contains("<path class=\"ground\"", "data-at=\"", "<title>")
			.contains("data-boundary=\"/api/v1/counties/larkmere\"", "/script/map.js\">");
		List<String> leaders = this.jdbc.sql(
				"select distinct tag from title_span s join tree t on t.id = s.tree where s.county = 'larkmere' and s.to_at is null")
			.query(String.class)
			.list();
		assertThat(leaders)
			.anySatisfy((tag) -> assertThat(page).contains("tabindex=\"-1\" href=\"/trees/" + tag + "\""));
	}

	@Test
	void neitherDrawsNorNamesATreeThatItsOwnerHides() throws Exception {
		this.trees.county("mapperton", "MPT");
		TestTrees.Filed filed = this.trees.standing("mapperton", 200, "2024-05-01");
		String tag = this.jdbc.sql("select tag from tree where id = cast(? as uuid)")
			.param(filed.tree())
			.query(String.class)
			.single();
		// the centre of its cell of the public grid, not the place itself: 40.1, -86.2
		assertThat(page("/counties/mapperton")).contains("/trees/" + tag, "data-at=\"40.10500,", "data-within=\"800\"")
			.doesNotContain("-86.20000");
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/owners").content(
					"{\"name\": \"O. Mapperton\", \"contact\": \"by the gate\"}"), this.people.coordinator("mapperton"))
			.andExpect(status().isCreated());
		assertThat(page("/counties/mapperton")).contains("a tree not shown at its owner")
			.doesNotContain(tag, filed.tree(), "data-at=", "40.105");
	}

	@Test
	void saysOfHowManyThePlaceIsNotShown() throws Exception {
		String page = page("/counties/larkmere");
		int drawn = page.split("data-at=\"", -1).length - 1;
		assertThat(drawn).isPositive();
		assertThat(page).containsPattern("\\d+ leaders are in this list; of \\d+ the place is not shown");
	}

	@Test
	void filtersByGenusAndKeepsItInTheAddress() throws Exception {
		String oaks = page("/counties/larkmere?genus=Quercus");
		assertThat(oaks).contains("<i lang=\"la\">Quercus alba</i>", "<option value=\"Quercus\" selected=\"selected\"")
			.doesNotContain("<i lang=\"la\">Acer");
		assertThat(page("/counties/larkmere?genus=Nothing")).contains("No species fits");
	}

	@Test
	void listsTheTitlesThatAreShared() throws Exception {
		long shared = this.jdbc.sql("""
				select count(*) from (select species from title_span where county = 'larkmere' and to_at is null
				group by species having count(*) > 1) s""").query(Long.class).single();
		assertThat(ROW.matcher(page("/counties/larkmere?show=shared")).results().count()).isEqualTo(shared)
			.isPositive();
	}

	@Test
	void listsSpeciesWithoutATreeYetWhereTheRulesListSpecies() throws Exception {
		this.trees.county("listerby", "LSB", """
				{"effectiveOn": "1800-01-01", "oldestFilingMonths": 1200,
				 "eligibleSpecies": ["quercus-alba", "acer-rubrum"]}""");
		this.trees.standing("listerby", 150, "2024-05-01");
		assertThat(page("/counties/listerby")).contains("listed species without a tree yet", "Quercus alba")
			.doesNotContain("Acer rubrum");
		assertThat(page("/counties/listerby?show=none"))
			.contains("Acer rubrum", "No tree of this species is ranked yet")
			.doesNotContain("<i lang=\"la\">Quercus alba</i>");
		assertThat(page("/counties/larkmere")).doesNotContain("listed species without a tree yet");
	}

	@Test
	void takesAnyPageNumber() throws Exception {
		assertThat(page("/counties/larkmere?page=99999")).contains("<th scope=\"row\">");
		assertThat(page("/counties/larkmere?page=none")).contains("<th scope=\"row\">");
	}

	@Test
	void givesBackWhatWasAskedAsText() throws Exception {
		assertThat(page("/counties/larkmere?name=\"><script>x</script>&genus=\"><b>")).doesNotContain("<script>x",
				"<b>");
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
