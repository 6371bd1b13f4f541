package county.bigtree.registry.pages.desk;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.pages.TestPages;
import county.bigtree.registry.pages.TestPages.Sent;
import county.bigtree.registry.pages.TestPages.Visitor;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A coordinator who clicks twice, goes back, and has the same page open twice.
 */
@RegistryTest
class CarelessDecisionsIT {

	private static final String[] NOT_RANKED = { "eligible", "no", "reason", "In a tub.", "do", "decide" };

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestPages pages;

	@Test
	void decideOnceByADoubleClick() throws Exception {
		Visitor desk = desk("pagesclicks", "PVA");
		String page = "/trees/PVA-0001/decisions/eligibility";
		Map<String, String> hidden = desk.hidden(desk.open(page));
		ExecutorService fingers = Executors.newFixedThreadPool(2);
		try {
			Callable<Sent> click = () -> desk.send(page, hidden, NOT_RANKED);
			List<Future<Sent>> clicks = fingers.invokeAll(List.of(click, click));
			assertThat(clicks.get(0).get().taken()).isEqualTo(clicks.get(1).get().taken());
		}
		finally {
			fingers.shutdown();
		}
		assertThat(desk.open("/desk/pagesclicks/journal")).containsOnlyOnce("In a tub.");
	}

	@Test
	void learnThatTheyDecidedAlreadyWhenTheyGoBack() throws Exception {
		Visitor desk = desk("pagesback", "PVB");
		String page = "/trees/PVB-0001/decisions/eligibility";
		Map<String, String> hidden = desk.hidden(desk.open(page));
		String then = desk.send(page, hidden, NOT_RANKED).taken();
		assertThat(desk.send(page, hidden, NOT_RANKED).taken()).isEqualTo(then);
		Sent other = desk.send(page, hidden, "eligible", "yes", "reason", "In the ground.", "do", "decide");
		assertThat(other.status()).isEqualTo(422);
		assertThat(other.page()).contains("You sent this form before, and that was done.", "ruled not eligible",
				"In the ground.");
		desk.send(page, desk.hidden(other.page()), "eligible", "yes", "reason", "In the ground.", "do", "decide")
			.taken();
		assertThat(desk.open("/trees/PVB-0001/decisions")).doesNotContain("ruled not eligible");
	}

	@Test
	void areToldInTheirSecondTabWhatTheFirstDid() throws Exception {
		Visitor desk = desk("pagestabs", "PVC");
		String page = "/trees/PVC-0001/decisions/eligibility";
		Map<String, String> second = desk.hidden(desk.open(page));
		desk.fill(page, NOT_RANKED).taken();
		Sent late = desk.send(page, second, NOT_RANKED);
		assertThat(late.status()).isEqualTo(412);
		assertThat(late.page()).contains("has changed since you read it", "ruled not eligible", "In a tub.");
	}

	private Visitor desk(String county, String prefix) throws Exception {
		this.trees.county(county, prefix);
		this.trees.standing(county, 100, "2024-05-02");
		return this.pages.signIn(this.people.coordinator(county));
	}

}
