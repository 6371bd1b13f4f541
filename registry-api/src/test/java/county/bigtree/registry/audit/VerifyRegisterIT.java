package county.bigtree.registry.audit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

/**
 * Checks look two at a time, at the same instant, and are told of in their order.
 */
@RegistryTest
class VerifyRegisterIT {

	private static final String SNAPSHOT = "select pg_current_snapshot()::text";

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	private final List<String> told = Collections.synchronizedList(new ArrayList<>());

	@Test
	void tellsInOrderWhatIsFoundOutOfOrder() {
		CountDownLatch second = new CountDownLatch(1);
		long wrong = look(check("first", (findings) -> {
			await(second);
			findings.add("one");
		}), check("second", (findings) -> {
			findings.add("two");
			findings.addMended("three");
			second.countDown();
		}), check("third", (findings) -> findings.add("four")));
		assertThat(wrong).isEqualTo(3);
		assertThat(this.told).containsExactly("first begins", "first: one", "first ends", "second begins",
				"second: two", "second: Mended since: three", "second ends", "third begins", "third: four",
				"third ends");
	}

	@Test
	void seesTheSameOnBothConnections() {
		List<String> seen = Collections.synchronizedList(new ArrayList<>());
		CountDownLatch written = new CountDownLatch(1);
		look(check("first", (findings) -> {
			seen.add(snapshot());
			commitSomething();
			written.countDown();
		}), check("second", (findings) -> {
			await(written);
			seen.add(snapshot());
		}), check("third", (findings) -> seen.add(snapshot())));
		assertThat(seen).hasSize(3).containsOnly(seen.get(0)).doesNotContain(snapshot());
	}

	@Test
	void endsAllWhenOneCannotBeFinished() {
		CountDownLatch looking = new CountDownLatch(1);
		AtomicBoolean ended = new AtomicBoolean();
		assertThatIllegalStateException().isThrownBy(() -> look(check("first", (findings) -> {
			looking.countDown();
			try {
				lookForAMinute(findings);
			}
			finally {
				ended.set(true);
			}
		}), check("second", (findings) -> {
			await(looking);
			throw new IllegalStateException("broken");
		}), check("third", (findings) -> this.told.add("third looks")))).withMessage("broken");
		assertThat(ended).isTrue();
		assertThat(this.told).doesNotContain("first ends", "third looks");
	}

	private long look(RegisterCheck... checks) {
		return new VerifyRegister(List.of(checks), this.jdbc, this.transactions).look(new Telling());
	}

	private String snapshot() {
		return this.jdbc.sql(SNAPSHOT).query(String.class).single();
	}

	private void commitSomething() {
		TransactionTemplate other = new TransactionTemplate(this.transactions);
		other.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
		other.executeWithoutResult(
				(status) -> this.jdbc.sql("select pg_current_xact_id()::text").query(String.class).single());
	}

	private static void lookForAMinute(Findings findings) {
		long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(1);
		while (System.nanoTime() < end) {
			findings.looked();
			Thread.onSpinWait();
		}
	}

	private static void await(CountDownLatch latch) {
		try {
			assertThat(latch.await(1, TimeUnit.MINUTES)).isTrue();
		}
		catch (InterruptedException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private static RegisterCheck check(String subject, Consumer<Findings> look) {
		return new RegisterCheck() {

			@Override
			public String subject() {
				return subject;
			}

			@Override
			public void look(Findings findings) {
				look.accept(findings);
			}

		};
	}

	private final class Telling implements VerifyRegister.Listener {

		@Override
		public int told() {
			return 10;
		}

		@Override
		public void begin(RegisterCheck check, OptionalLong expected) {
			VerifyRegisterIT.this.told.add(check.subject() + " begins");
		}

		@Override
		public void found(RegisterCheck check, String sentence) {
			VerifyRegisterIT.this.told.add(check.subject() + ": " + sentence);
		}

		@Override
		public void looked(long count) {
			// How much is told of it depends on the clock.
		}

		@Override
		public void end(RegisterCheck check, Findings findings, long nanos) {
			VerifyRegisterIT.this.told.add(check.subject() + " ends");
		}

	}

}
