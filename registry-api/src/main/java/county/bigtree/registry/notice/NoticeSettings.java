package county.bigtree.registry.notice;

import org.jspecify.annotations.Nullable;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How notices go out by e-mail, where {@code spring.mail.host} names a mail server.
 *
 * @param from the address they come from; needed with a mail server
 * @param aDay mails to one person in 24 hours at most; what is more waits
 */
@ConfigurationProperties("registry.notices")
record NoticeSettings(@Nullable String from, @DefaultValue("20") int aDay) {

	NoticeSettings {
		if (aDay < 1 || aDay > 1000) {
			throw new IllegalArgumentException("registry.notices.a-day must be from 1 to 1000 but was " + aDay);
		}
	}

}
