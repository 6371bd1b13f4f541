package county.bigtree.registry.people;

import java.util.List;

import com.nulabinc.zxcvbn.Zxcvbn;
import county.bigtree.registry.problem.Problem;

/**
 * The rule for a new password: {@value #LEAST} to {@value #MOST} characters, any of them,
 * and not one of those that are tried first (OWASP ASVS 4.0.3, 2.1.1, 2.1.2, 2.1.7 and
 * 2.1.9: length, no composition rules). What is tried first is judged by zxcvbn, which
 * knows the 30,000 commonest passwords, keyboard rows, repeats and dates.
 */
final class Password {

	static final int LEAST = 12;

	static final int MOST = 128;

	/** Fewer than a million guesses, in zxcvbn's count from 0 to 4. */
	private static final int TOO_EASY = 1;

	/** What is judged of a long one: judging takes time that grows with the length. */
	private static final int JUDGED = 40;

	private static final Zxcvbn guesses = new Zxcvbn();

	private Password() {
	}

	/**
	 * Refuses one that can't be taken.
	 * @param pointer where it stands in the request
	 * @param known what anyone may know of the person
	 */
	static void require(String password, String pointer, List<String> known) {
		int length = password.codePointCount(0, password.length());
		if (length < LEAST || length > MOST) {
			throw Problem.invalid(pointer, "wrong-length",
					"must have from " + LEAST + " to " + MOST + " characters but has " + length);
		}
		String judged = password.substring(0, Math.min(JUDGED, password.length()));
		if (guesses.measure(judged, known).getScore() <= TOO_EASY) {
			throw Problem.invalid(pointer, "too-easy",
					"is too easily guessed: take a few words that don't belong together");
		}
	}

}
