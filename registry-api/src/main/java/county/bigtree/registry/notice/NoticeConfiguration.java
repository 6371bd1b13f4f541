package county.bigtree.registry.notice;

import county.bigtree.registry.session.PublicAddress;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.thymeleaf.ITemplateEngine;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.mail.javamail.JavaMailSender;

/**
 * Sends notices where a mail server is named. The demo's people have no mail boxes: it
 * sends none.
 */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(NoticeSettings.class)
class NoticeConfiguration {

	private static final Logger logger = LoggerFactory.getLogger(NoticeConfiguration.class);

	@Bean
	Mailing mailing(ObjectProvider<JavaMailSender> sender, NoticeSettings settings, PublicAddress address,
			ITemplateEngine templates, @Value("${registry.demo:false}") String told) {
		// As in all of the demo: named without a value it is on.
		boolean demo = !"false".equals(told);
		JavaMailSender server = demo ? null : sender.getIfAvailable();
		if (demo && sender.getIfAvailable() != null) {
			logger.info("The demo sends no mail, whatever spring.mail.host says");
		}
		return new Mailing(server, settings.from(), address, templates);
	}

}
