package county.bigtree.registry.notice;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.UUID;

import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Signs the links by which somebody has no more mails of a kind without signing in
 * (HMAC-SHA-256, RFC 2104). A link is good for that alone, and for good.
 */
@Component
class NoticeLinks {

	private static final String ALGORITHM = "HmacSHA256";

	private final JdbcClient jdbc;

	private final SecureRandom random = new SecureRandom();

	NoticeLinks(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** The path, with its query, to have no more of the kind. */
	String off(UUID person, NoticeKind kind) {
		return "/notices/off?to=" + person + "&kind=" + kind.code() + "&key=" + sign(person, kind.code());
	}

	boolean isSigned(UUID person, String kind, String key) {
		return MessageDigest.isEqual(sign(person, kind).getBytes(StandardCharsets.US_ASCII),
				key.getBytes(StandardCharsets.UTF_8));
	}

	private String sign(UUID person, String kind) {
		try {
			Mac mac = Mac.getInstance(ALGORITHM);
			mac.init(new SecretKeySpec(secret(), ALGORITHM));
			byte[] signature = mac.doFinal(("notices-off " + person + " " + kind).getBytes(StandardCharsets.UTF_8));
			return Base64.getUrlEncoder().withoutPadding().encodeToString(signature);
		}
		catch (GeneralSecurityException ex) {
			throw new IllegalStateException("Every Java platform has " + ALGORITHM, ex);
		}
	}

	/** The same on all nodes: of two that make it, one is kept. */
	private byte[] secret() {
		return this.jdbc.sql("select secret from notice_secret").query(byte[].class).optional().orElseGet(() -> {
			byte[] made = new byte[32];
			this.random.nextBytes(made);
			this.jdbc.sql("insert into notice_secret (secret) values (?) on conflict do nothing").param(made).update();
			return this.jdbc.sql("select secret from notice_secret").query(byte[].class).single();
		});
	}

}
