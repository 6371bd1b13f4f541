package county.bigtree.registry.health;

import java.time.Duration;

import org.junit.jupiter.api.Test;

import org.springframework.boot.web.server.context.WebServerApplicationContext;

import static org.assertj.core.api.Assertions.assertThat;

class StopNoticeTest {

	@Test
	void tellsBeforeTheWebServerStopsTakingRequests() {
		assertThat(new StopNotice(Duration.ZERO).getPhase())
			.isGreaterThan(WebServerApplicationContext.GRACEFUL_SHUTDOWN_PHASE);
	}

	@Test
	void saysThatItStopsWhileItStillServes() throws Exception {
		StopNotice notice = new StopNotice(Duration.ofSeconds(30));
		notice.start();
		assertThat(notice.isStopping()).isFalse();
		Thread stopping = new Thread(notice::stop);
		stopping.start();
		while (!notice.isStopping()) {
			Thread.onSpinWait();
		}
		assertThat(notice.isRunning()).isTrue();
		stopping.interrupt();
		stopping.join();
		assertThat(notice.isRunning()).isFalse();
		notice.start();
		assertThat(notice.isStopping()).as("started again").isFalse();
	}

}
