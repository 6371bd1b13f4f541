package county.bigtree.registry.notice;

import java.time.Duration;
import java.util.stream.IntStream;

import county.bigtree.registry.session.PublicAddresses;
import org.junit.jupiter.api.Test;

import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.thymeleaf.spring6.SpringTemplateEngine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * How long an unsent notice waits, and what a mailing needs. No outside source.
 */
class OutboxTest {

	@Test
	void waitsTwiceAsLongAfterEachFailureAndSixHoursAtMost() {
		assertThat(IntStream.rangeClosed(1, 4).mapToObj(Outbox::waitAfter)).containsExactly(Duration.ofMinutes(1),
				Duration.ofMinutes(2), Duration.ofMinutes(4), Duration.ofMinutes(8));
		assertThat(Outbox.waitAfter(9)).isEqualTo(Duration.ofMinutes(256));
		assertThat(Outbox.waitAfter(10)).isEqualTo(Duration.ofHours(6));
		assertThat(Outbox.waitAfter(1000)).isEqualTo(Duration.ofHours(6));
	}

	@Test
	void isTriedForAboutTwoDays() {
		Duration all = IntStream.range(1, Outbox.MOST_TRIES)
			.mapToObj(Outbox::waitAfter)
			.reduce(Duration.ZERO, Duration::plus);
		assertThat(all).isBetween(Duration.ofHours(36), Duration.ofHours(48));
	}

	@Test
	void needsASenderAndAnAddressWithAMailServer() {
		SpringTemplateEngine templates = new SpringTemplateEngine();
		JavaMailSenderImpl server = new JavaMailSenderImpl();
		assertThatThrownBy(() -> new Mailing(server, null, PublicAddresses.of("https://trees.example.org"), templates))
			.hasMessageContaining("registry.notices.from");
		assertThatThrownBy(() -> new Mailing(server, "a@example.org", PublicAddresses.of(""), templates))
			.hasMessageContaining("registry.public-address");
		assertThat(new Mailing(null, null, PublicAddresses.of(""), templates).isOn()).isFalse();
	}

	@Test
	void putsWhatStandsInAHeaderOnOneLine() {
		assertThat(Mailing.oneLine(" a\r\nBcc: b\t\u0000c\u2028d ")).isEqualTo("a Bcc: b c d");
	}

}
