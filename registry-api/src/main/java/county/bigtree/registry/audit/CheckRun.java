package county.bigtree.registry.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/**
 * One check of a verification. It looks on a thread of its own and is told of in its
 * turn: what it finds before waits until then.
 */
final class CheckRun {

	private final RegisterCheck check;

	private final VerifyRegister.Listener listener;

	private final CompletableFuture<OptionalLong> began = new CompletableFuture<>();

	private final CompletableFuture<Ended> ended = new CompletableFuture<>();

	private final List<String> untold = new ArrayList<>();

	private volatile boolean turn;

	private volatile boolean stopped;

	CheckRun(RegisterCheck check, VerifyRegister.Listener listener) {
		this.check = check;
		this.listener = listener;
	}

	/**
	 * Looks at all of it, in the transaction of the caller.
	 */
	void look() {
		long start = System.nanoTime();
		this.began.complete(this.check.expected());
		Findings findings = new Findings(this.listener.told(), this::found, this::looked);
		this.check.look(findings);
		this.ended.complete(new Ended(findings, System.nanoTime() - start));
	}

	/**
	 * Tells of it from its beginning to its end, for which it waits.
	 * @return how much is wrong
	 * @throws RuntimeException what ended it early
	 */
	long tell() {
		OptionalLong expected = await(this.began);
		synchronized (this) {
			this.listener.begin(this.check, expected);
			this.untold.forEach((sentence) -> this.listener.found(this.check, sentence));
			this.turn = true;
		}
		Ended end = await(this.ended);
		this.listener.end(this.check, end.findings(), end.nanos());
		return end.findings().count();
	}

	/**
	 * Ends it early, unless it has ended.
	 */
	void stop(Throwable why) {
		this.stopped = true;
		this.began.completeExceptionally(why);
		this.ended.completeExceptionally(why);
	}

	private synchronized void found(String sentence) {
		if (this.turn) {
			this.listener.found(this.check, sentence);
		}
		else {
			this.untold.add(sentence);
		}
	}

	private void looked(long count) {
		if (this.stopped) {
			throw new CancellationException("Another check could not be finished");
		}
		if (this.turn) {
			this.listener.looked(count);
		}
	}

	private static <T> T await(CompletableFuture<T> what) {
		try {
			return what.join();
		}
		catch (CompletionException ex) {
			if (ex.getCause() instanceof RuntimeException cause) {
				throw cause;
			}
			throw ex;
		}
	}

	private record Ended(Findings findings, long nanos) {
	}

}
