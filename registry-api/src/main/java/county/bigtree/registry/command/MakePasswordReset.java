package county.bigtree.registry.command;

import java.util.List;
import java.util.Optional;

import county.bigtree.registry.people.ResetPassword;

import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Service;

/**
 * {@code reset-password EMAIL}: prints a one-time token with which the owner of that
 * account chooses another password, also where no administrator is left to make one.
 */
@Service
class MakePasswordReset implements RegisterCommand {

	private final ResetPassword resetPassword;

	private final ApplicationArguments arguments;

	MakePasswordReset(ResetPassword resetPassword, ApplicationArguments arguments) {
		this.resetPassword = resetPassword;
		this.arguments = arguments;
	}

	@Override
	public String word() {
		return "reset-password";
	}

	@Override
	public int run(Report report) {
		List<String> words = this.arguments.getNonOptionArgs();
		Optional<ResetPassword.Made> made = (words.size() == 1) ? this.resetPassword.makeAtConsole(words.get(0))
				: Optional.empty();
		if (made.isEmpty()) {
			report.line("Name the e-mail address of one account that is open: reset-password EMAIL");
			return FAILED;
		}
		report.line("One-time token for %s, open until %s: %s", words.get(0), made.get().expiresAt(),
				made.get().secret());
		report.line("Open /password-reset on this register in a browser and enter it there.");
		report.line("Or use it with POST /api/v1/people/password-reset and a body of "
				+ "{\"token\": \"...\", \"newPassword\": \"...\"}.");
		return WELL;
	}

}
