package county.bigtree.registry.health;

import java.time.Duration;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;

/**
 * Lets a balancer know before the service stops: it says that it is not ready, and goes
 * on serving for as long as the balancer takes to notice. Nothing is waited for where
 * {@code registry.stop-notice} is not set.
 */
@Component
public class StopNotice implements SmartLifecycle {

	/** Before the web server, which stops taking requests near the highest phase. */
	private static final int BEFORE_THE_WEB_SERVER = Integer.MAX_VALUE - 100;

	private final Duration notice;

	private volatile boolean running;

	private volatile boolean stopping;

	StopNotice(@Value("${registry.stop-notice:0s}") Duration notice) {
		this.notice = notice;
	}

	public boolean isStopping() {
		return this.stopping;
	}

	@Override
	public void start() {
		this.running = true;
		this.stopping = false;
	}

	@Override
	public void stop() {
		this.stopping = true;
		try {
			Thread.sleep(this.notice.toMillis());
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
		this.running = false;
	}

	@Override
	public boolean isRunning() {
		return this.running;
	}

	@Override
	public int getPhase() {
		return BEFORE_THE_WEB_SERVER;
	}

}
