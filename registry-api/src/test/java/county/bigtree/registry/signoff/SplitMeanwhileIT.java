package county.bigtree.registry.signoff;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Actors;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.tree.PlaceBody;
import county.bigtree.registry.tree.SplitBody;
import county.bigtree.registry.tree.SplitTree;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A split may take a measurement to another tree while somebody who looked before waits
 * to revoke a sign-off on it: the scores of the tree that has it now must follow.
 */
@RegistryTest
class SplitMeanwhileIT {

	private static final LongConsumer WHATEVER_ITS_REVISION = (revision) -> {
	};

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private Journal journal;

	@Autowired
	private SplitTree splitting;

	@Autowired
	private TakeBack takeBack;

	@Autowired
	private Actors actors;

	@Autowired
	private TransactionTemplate transactions;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void aRevocationIsTriedAgainWhereItsMeasurementWentElsewhere() throws Exception {
		this.trees.county("splitmean", "SPM");
		TestTrees.Filed filed = this.trees.standing("splitmean", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("splitmean");
		UUID second = made(this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
			.content(TestTrees.measurement(110, "2023-05-02")), filed.filer()));
		UUID signOff = made(this.trees.signOff(second.toString(), this.people.verifier("splitmean"),
				"{\"verdict\": \"confirmed\"}"));
		Actor actor = this.actors.get(coordinator.id());
		CountDownLatch held = new CountDownLatch(1);
		CompletableFuture<Void> split = CompletableFuture
			.runAsync(() -> this.transactions.executeWithoutResult((status) -> {
				this.journal.lock("splitmean");
				held.countDown();
				pause();
				this.splitting.split(actor, filed.tree(),
						new SplitBody(List.of(second), new PlaceBody(40.2, -86.3, 5.0), null, "two trees"),
						WHATEVER_ITS_REVISION);
			}));
		assertThat(held.await(30, TimeUnit.SECONDS)).isTrue();
		assertThatThrownBy(() -> this.takeBack.revoke(actor, signOff, "the wrong tree", WHATEVER_ITS_REVISION))
			.isInstanceOf(ConcurrencyFailureException.class);
		split.get(30, TimeUnit.SECONDS);
		this.takeBack.revoke(actor, signOff, "the wrong tree", WHATEVER_ITS_REVISION);
		List<String> found = new ArrayList<>();
		this.checks.forEach((check) -> check.look(new Findings(1000, found::add, (looked) -> {
		})));
		assertThat(found).noneMatch((sentence) -> sentence.contains("splitmean"));
	}

	/** Long enough for the other to look and then to wait for the county. */
	private static void pause() {
		try {
			Thread.sleep(700);
		}
		catch (InterruptedException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private static UUID made(ResultActions answer) throws Exception {
		return UUID.fromString(JsonPath
			.read(answer.andExpect(status().isCreated()).andReturn().getResponse().getContentAsString(), "$.id"));
	}

}
