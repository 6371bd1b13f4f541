package county.bigtree.registry.notice;

import java.util.Arrays;
import java.util.List;
import java.util.Properties;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.session.PublicAddresses;
import jakarta.mail.Address;
import jakarta.mail.BodyPart;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import org.thymeleaf.ITemplateEngine;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;

/**
 * Sends the notices of the service under test to a mail server of the test's own: the
 * service itself has none.
 */
@Component
class MailRoom {

	static final String FROM = "registry@trees.example.org";

	private final Outbox outbox;

	private final WriteLetter write;

	private final RegisterClock clock;

	private final PlatformTransactionManager transactions;

	private final ITemplateEngine templates;

	private final JdbcClient jdbc;

	MailRoom(Outbox outbox, WriteLetter write, RegisterClock clock, PlatformTransactionManager transactions,
			ITemplateEngine templates, JdbcClient jdbc) {
		this.outbox = outbox;
		this.write = write;
		this.clock = clock;
		this.transactions = transactions;
		this.templates = templates;
		this.jdbc = jdbc;
	}

	/** What other tests left waiting is not sent. */
	void clear() {
		this.jdbc.sql("update notice set mail = 'none' where mail in ('waiting', 'failed')").update();
	}

	static GreenMail server() {
		GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
		server.start();
		return server;
	}

	SendNotices sender(GreenMail server) {
		return sender(server.getSmtp().getPort(), "https://trees.example.org");
	}

	SendNotices sender(int port, String address) {
		return new SendNotices(mailing(port, address), this.outbox, this.write, this.clock, this.transactions);
	}

	Mailing mailing(int port, String address) {
		JavaMailSenderImpl sender = new JavaMailSenderImpl();
		sender.setHost("127.0.0.1");
		sender.setPort(port);
		Properties properties = sender.getJavaMailProperties();
		properties.setProperty("mail.smtp.connectiontimeout", "5000");
		properties.setProperty("mail.smtp.timeout", "5000");
		return new Mailing(sender, FROM, PublicAddresses.of(address), this.templates);
	}

	/** Those to the person, in the order in which they came. */
	static List<MimeMessage> to(GreenMail server, TestPerson person) {
		return Arrays.stream(server.getReceivedMessages())
			.filter((message) -> recipient(message).contains(person.email()))
			.toList();
	}

	static List<String> subjects(GreenMail server, TestPerson person) {
		return to(server, person).stream().map(MailRoom::subject).toList();
	}

	static String subject(MimeMessage message) {
		try {
			return message.getSubject();
		}
		catch (MessagingException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private static String recipient(MimeMessage message) {
		try {
			return String.join(",", Arrays.stream(message.getAllRecipients()).map(Address::toString).toList());
		}
		catch (MessagingException ex) {
			throw new IllegalStateException(ex);
		}
	}

	/** The part of the type, as it reads. */
	static String part(MimeMessage message, String type) throws Exception {
		MimeMultipart parts = (MimeMultipart) message.getContent();
		for (int index = 0; index < parts.getCount(); index++) {
			BodyPart part = parts.getBodyPart(index);
			if (part.isMimeType(type)) {
				return (String) part.getContent();
			}
		}
		throw new IllegalStateException("No part is " + type);
	}

}
