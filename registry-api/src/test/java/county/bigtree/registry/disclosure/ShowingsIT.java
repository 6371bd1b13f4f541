package county.bigtree.registry.disclosure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.UUID;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.place.Showing;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.owner.ConsentBody;
import county.bigtree.registry.owner.OwnerBody;
import county.bigtree.registry.owner.RecordOwner;
import county.bigtree.registry.people.TestPeople;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The database counts consents as a plain reading of what was said does, and its filter
 * is the domain's rule.
 */
@RegistryTest
class ShowingsIT {

	private static final int ROUNDS = 150;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private TransactionTemplate transactions;

	@Autowired
	private Journal journal;

	@Autowired
	private RecordOwner record;

	@Autowired
	private Showings showings;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void theFilterOfTheDatabaseIsTheRuleOfTheDomainWhateverOwnersSay() throws Exception {
		this.trees.county("showingshire", "SWS");
		TestTrees.Filed filed = this.trees.standing("showingshire", 100, "2020-05-02");
		UUID tree = UUID.fromString(filed.tree());
		Random random = new Random(20261126);
		int listed = 0;
		int exact = 0;
		for (int round = 0; round < ROUNDS; round++) {
			List<Said> owners = new ArrayList<>();
			Showing shown = Objects.requireNonNull(this.transactions.execute((status) -> {
				status.setRollbackOnly();
				for (int owner = random.nextInt(3); owner >= 0; owner--) {
					owners.add(new Said(words(random), words(random)));
					say(tree, owners.get(owners.size() - 1), filed.filer().id());
				}
				Showing found = Objects.requireNonNull(this.showings.of(List.of(tree)).get(tree));
				assertThat(this.jdbc.sql("select is_listed(?, clock_timestamp())")
					.param(tree)
					.query(Boolean.class)
					.single()).isEqualTo(found.listed());
				assertThat(this.showings.consent(tree).allowsPlace())
					.isEqualTo(owners.stream().allMatch((one) -> holds(one.place())));
				return found;
			}));
			boolean all = owners.stream().allMatch((one) -> holds(one.listing()));
			assertThat(shown).as(owners.toString())
				.isEqualTo(all ? new Showing(true, Disclosure.NEARBY) : new Showing(false, Disclosure.COUNTY));
			listed += all ? 1 : 0;
			exact += owners.stream().allMatch((one) -> holds(one.place())) ? 1 : 0;
		}
		assertThat(List.of(listed, exact)).allMatch((times) -> times > 10 && times < ROUNDS - 10);
	}

	private void say(UUID tree, Said said, UUID by) {
		Change change = this.journal.open("showingshire");
		UUID owner = this.record.owner(change, tree, new OwnerBody("C. Landholder", null, null), "#");
		this.journal.close(change, "owner-recorded", by);
		for (Word word : said.listing()) {
			say(owner, "listing", word, by);
		}
		for (Word word : said.place()) {
			say(owner, "place", word, by);
		}
	}

	private void say(UUID owner, String purpose, Word word, UUID by) {
		Change change = this.journal.open("showingshire");
		this.record.said(change, owner,
				new ConsentBody(List.of(purpose), word.given(), "letter", LocalDate.EPOCH, word.until(), null), by);
		this.journal.close(change, "consent-recorded", by);
	}

	private static List<Word> words(Random random) {
		List<Word> words = new ArrayList<>();
		for (int count = random.nextInt(4); count > 0; count--) {
			boolean given = random.nextInt(4) > 0;
			LocalDate until = switch (random.nextInt(3)) {
				case 0 -> LocalDate.now().minusDays(2);
				case 1 -> LocalDate.now().plusDays(2);
				default -> null;
			};
			words.add(new Word(given, given ? until : null));
		}
		return words;
	}

	/** The last word counts, while it has not run out. */
	private static boolean holds(List<Word> words) {
		if (words.isEmpty()) {
			return false;
		}
		Word last = words.get(words.size() - 1);
		LocalDate until = last.until();
		return last.given() && (until == null || until.isAfter(LocalDate.now()));
	}

	private record Said(List<Word> listing, List<Word> place) {
	}

	private record Word(boolean given, @Nullable LocalDate until) {
	}

}
