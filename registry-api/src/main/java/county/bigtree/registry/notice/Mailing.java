package county.bigtree.registry.notice;

import java.io.UnsupportedEncodingException;
import java.net.URI;
import java.time.Instant;
import java.util.Date;
import java.util.Locale;

import county.bigtree.registry.session.PublicAddress;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import org.jspecify.annotations.Nullable;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

import org.springframework.mail.MailParseException;
import org.springframework.mail.javamail.JavaMailSender;

/**
 * The mail server, if there is one, and how a notice is packed for it: plain text and
 * HTML that say the same (multipart/alternative, RFC 2046), marked as written by a
 * machine (RFC 3834), with an address to which one request is enough to have no more of
 * the kind (RFC 8058), and with the same Message-ID however often it is sent.
 */
class Mailing {

	private static final String UTF_8 = "UTF-8";

	private final @Nullable JavaMailSender sender;

	private final String from;

	private final PublicAddress address;

	private final ITemplateEngine templates;

	/**
	 * The mailing of a service that has a mail server.
	 * @param sender null for none
	 * @throws IllegalArgumentException if mails would have no sender or no links
	 */
	Mailing(@Nullable JavaMailSender sender, @Nullable String from, PublicAddress address, ITemplateEngine templates) {
		if (sender != null && (from == null || from.isBlank() || !address.isKnown())) {
			throw new IllegalArgumentException(
					"spring.mail.host needs registry.notices.from, from which notices come, and registry.public-address, to which they lead");
		}
		this.sender = sender;
		this.from = (from != null) ? from.strip() : "";
		this.address = address;
		this.templates = templates;
	}

	boolean isOn() {
		return this.sender != null;
	}

	/** The path as people reach it. */
	String link(String path) {
		return this.address.of(path);
	}

	/**
	 * Hands the letter to the mail server.
	 * @throws org.springframework.mail.MailException if it isn't taken
	 */
	void send(Letter letter, Instant at) {
		if (this.sender == null) {
			throw new IllegalStateException("There is no mail server");
		}
		MimeMessage message = this.sender.createMimeMessage();
		try {
			pack(message, letter, at);
		}
		catch (MessagingException | UnsupportedEncodingException ex) {
			throw new MailParseException("A notice could not be packed", ex);
		}
		this.sender.send(message);
	}

	private void pack(MimeMessage message, Letter letter, Instant at)
			throws MessagingException, UnsupportedEncodingException {
		message.setFrom(new InternetAddress(this.from, true));
		InternetAddress to = new InternetAddress(letter.email(), true);
		to.setPersonal(oneLine(letter.name()), UTF_8);
		message.setRecipient(Message.RecipientType.TO, to);
		message.setSubject(oneLine(letter.subject()), UTF_8);
		message.setSentDate(Date.from(at));
		message.setContent(new MimeMultipart("alternative", part(letter.text(), "plain"), part(html(letter), "html")));
		message.setHeader("Message-ID", "<" + letter.id() + "@" + host() + ">");
		message.setHeader("Auto-Submitted", "auto-generated");
		message.setHeader("List-Unsubscribe", "<" + letter.off() + ">");
		if (this.address.isSecure()) {
			message.setHeader("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
		}
	}

	private static MimeBodyPart part(String text, String subtype) throws MessagingException {
		MimeBodyPart part = new MimeBodyPart();
		part.setText(text, UTF_8, subtype);
		return part;
	}

	private String html(Letter letter) {
		Context context = new Context(Locale.ENGLISH);
		context.setVariable("letter", letter);
		return this.templates.process("mail/notice", context);
	}

	private String host() {
		return URI.create(this.address.of("/")).getHost();
	}

	/** What stands in a header stands on one line, whatever somebody calls themselves. */
	static String oneLine(String words) {
		return words.replaceAll("[\\p{Cntrl}\\u2028\\u2029]+", " ").strip();
	}

}
