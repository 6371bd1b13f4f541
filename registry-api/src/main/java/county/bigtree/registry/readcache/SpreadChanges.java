package county.bigtree.registry.readcache;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.ChangeWatcher;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.DisposableBean;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Makes this node forget what it knew of the counties of a change once that is committed,
 * before it is acknowledged, and tells the other nodes afterwards. Not in the change's
 * own transaction: one that notifies commits alone in the whole database.
 */
@Component
class SpreadChanges implements ChangeWatcher, DisposableBean {

	private static final Logger logger = LoggerFactory.getLogger(SpreadChanges.class);

	private final RegisterVersions versions;

	private final JdbcClient jdbc;

	private final TransactionTemplate transaction;

	private final Set<String> untold = ConcurrentHashMap.newKeySet();

	private final ThreadPoolExecutor teller = new ThreadPoolExecutor(1, 1, 10, TimeUnit.SECONDS,
			new LinkedBlockingQueue<>(1), SpreadChanges::thread, new ThreadPoolExecutor.DiscardPolicy());

	SpreadChanges(RegisterVersions versions, JdbcClient jdbc, PlatformTransactionManager transactions) {
		this.versions = versions;
		this.jdbc = jdbc;
		this.transaction = new TransactionTemplate(transactions);
		this.teller.allowCoreThreadTimeOut(true);
	}

	private static Thread thread(Runnable work) {
		Thread thread = new Thread(work, "spread-changes");
		thread.setDaemon(true);
		return thread;
	}

	@Override
	public void closed(Change change, String kind, @Nullable UUID actor) {
		afterwards(change.counties());
	}

	@Override
	public void caughtUp(String county, Instant at) {
		afterwards(Set.of(county));
	}

	private void afterwards(Set<String> counties) {
		TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
			@Override
			public void afterCompletion(int status) {
				if (status != STATUS_ROLLED_BACK) {
					SpreadChanges.this.versions.forget(counties);
					tell(counties);
				}
			}
		});
	}

	/**
	 * One telling at a time; what comes meanwhile waits for the next, which tells all.
	 */
	private void tell(Collection<String> counties) {
		this.untold.addAll(counties);
		this.teller.execute(this::tell);
	}

	private void tell() {
		List<String> counties = List.copyOf(this.untold);
		counties.forEach(this.untold::remove);
		if (counties.isEmpty()) {
			return;
		}
		try {
			this.transaction.executeWithoutResult((status) -> {
				this.jdbc.sql("set local synchronous_commit = off").update();
				this.jdbc.sql("select pg_notify(?, county) from unnest(?) county")
					.params(FollowVersions.CHANNEL, counties.toArray(String[]::new))
					.query((row) -> {
					});
			});
		}
		catch (DataAccessException | TransactionException ex) {
			logger.debug("Other nodes are not told of {}: they will see", counties, ex);
		}
	}

	@Override
	public void destroy() {
		this.teller.shutdownNow();
	}

}
