package county.bigtree.registry.command;

import java.util.List;

import county.bigtree.registry.people.InvitePerson;

import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Service;

/**
 * {@code invite-administrator EMAIL}: prints a one-time invitation for one more
 * administrator, at any time, to whoever has the server's console.
 */
@Service
class InviteAdministrator implements RegisterCommand {

	private final InvitePerson invitePerson;

	private final ApplicationArguments arguments;

	InviteAdministrator(InvitePerson invitePerson, ApplicationArguments arguments) {
		this.invitePerson = invitePerson;
		this.arguments = arguments;
	}

	@Override
	public String word() {
		return "invite-administrator";
	}

	@Override
	public int run(Report report) {
		List<String> words = this.arguments.getNonOptionArgs();
		if (words.size() != 1 || !words.get(0).matches("[^@\\s]+@[^@\\s]+")) {
			report.line("Name one e-mail address: invite-administrator EMAIL");
			return FAILED;
		}
		InvitePerson.Invited invited = this.invitePerson.inviteAdministrator(words.get(0));
		report.line("One-time invitation for the administrator %s, open until %s: %s", invited.email(),
				invited.expiresAt(), invited.secret());
		report.line("Open /invitations on this register in a browser and enter it there.");
		report.line("Or accept it with POST /api/v1/invitations/acceptance and a body of "
				+ "{\"token\": \"...\", \"password\": \"...\", \"creditName\": \"...\"}.");
		return WELL;
	}

}
