package county.bigtree.registry.people;

import java.util.Optional;

/**
 * The rule for a new password: {@value #LEAST} to {@value #MOST} characters, any of them
 * (OWASP ASVS 4.0.3, 2.1.1, 2.1.2 and 2.1.9: length, no composition rules).
 */
final class Password {

	static final int LEAST = 12;

	static final int MOST = 128;

	private Password() {
	}

	/** Why it can't be taken, or nothing. */
	static Optional<String> refusal(String password) {
		int length = password.codePointCount(0, password.length());
		return (length < LEAST || length > MOST)
				? Optional.of("must have from " + LEAST + " to " + MOST + " characters but has " + length)
				: Optional.empty();
	}

}
