package county.bigtree.registry.people;

import county.bigtree.registry.session.EndSessions;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Ends all sessions of the one who asks, or records that one has ended.
 */
@Component
public class SignOut {

	private final EndSessions sessions;

	private final SignInRecord record;

	SignOut(EndSessions sessions, SignInRecord record) {
		this.sessions = sessions;
		this.record = record;
	}

	@Transactional
	public void signOut(Actor actor, boolean everywhere, String network) {
		if (everywhere) {
			this.sessions.of(actor.id(), null);
		}
		this.record.note(everywhere ? SignInEvent.SIGNED_OUT_EVERYWHERE : SignInEvent.SIGNED_OUT, actor.id(), network);
	}

}
