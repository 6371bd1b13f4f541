package county.bigtree.registry.notice;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * What a mail says, before it is packed.
 *
 * @param id of the notice
 * @param email to whom
 * @param name by which they are credited
 * @param lines further ones, if there are several things to tell
 * @param link where it stands in full
 * @param to what the link is called
 * @param why the reader gets it
 * @param off the address to have no more of the kind
 * @param offWords what that is called
 */
record Letter(UUID id, String email, String name, String subject, String greeting, String lead, List<String> lines,
		String link, String to, String why, String off, String offWords) {

	Letter {
		lines = List.copyOf(lines);
	}

	/** The plain text. */
	String text() {
		List<String> parts = new ArrayList<>(List.of(this.greeting, "", this.lead, ""));
		this.lines.forEach((line) -> parts.add("- " + Mailing.oneLine(line)));
		if (!this.lines.isEmpty()) {
			parts.add("");
		}
		parts.addAll(List.of(this.to + ":", this.link, "", "-- ", this.why, this.offWords + ":", this.off, ""));
		return String.join("\r\n", parts);
	}

}
