package county.bigtree.registry.people;

import java.util.Locale;

/**
 * What may happen at the door.
 */
public enum SignInEvent {

	/** With a cookie. */
	SIGNED_IN,
	/** For a token or a role, without signing in. */
	PASSWORD_GIVEN,
	/** The password did not fit, or nobody has the address. */
	FAILED,
	/** Too much had failed before: the password was not looked at. */
	HELD_BACK,
	/** The one session. */
	SIGNED_OUT,
	/** All sessions. */
	SIGNED_OUT_EVERYWHERE,
	/** By the one whose it is. */
	PASSWORD_CHANGED,
	/** The address that one signs in with, by the one whose it is. */
	EMAIL_CHANGED,
	/** Someone made a one-time link for the password. */
	RESET_MADE,
	/** By a one-time link. */
	PASSWORD_RESET;

	/** As in JSON and in the database. */
	public String code() {
		return name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

	static SignInEvent ofCode(String code) {
		return valueOf(code.toUpperCase(Locale.ROOT).replace('-', '_'));
	}

}
