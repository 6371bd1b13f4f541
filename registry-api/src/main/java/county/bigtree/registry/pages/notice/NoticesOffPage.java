package county.bigtree.registry.pages.notice;

import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.notice.NoticeKind;
import county.bigtree.registry.notice.OwnNotices;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * No more mails of a kind, by the link in one of them and without signing in. Opening the
 * link changes nothing, since programs that look into mails open it too; a mail program's
 * own button sends the POST at once (RFC 8058) and is answered without being led on.
 */
@Controller
@RequestMapping("/notices/off")
@Hidden
class NoticesOffPage {

	private static final String VIEW = "notices-off";

	private final OwnNotices notices;

	NoticesOffPage(OwnNotices notices) {
		this.notices = notices;
	}

	@GetMapping
	@Access(Who.ANYONE)
	String show(@RequestParam(defaultValue = "") String to, @RequestParam(defaultValue = "") String kind,
			@RequestParam(defaultValue = "") String key, Model model) {
		boolean signed = person(to)
			.flatMap((person) -> NoticeKind.find(kind).filter((one) -> this.notices.isSigned(person, one, key)))
			.isPresent();
		return page(model, signed ? "ask" : "wrong", to, kind, key);
	}

	@PostMapping
	@Access(Who.ANYONE)
	String off(@RequestParam(defaultValue = "") String to, @RequestParam(defaultValue = "") String kind,
			@RequestParam(defaultValue = "") String key, Model model, HttpServletResponse response) {
		boolean done = person(to)
			.flatMap((person) -> NoticeKind.find(kind).filter((one) -> this.notices.refuse(person, one, key)))
			.isPresent();
		if (!done) {
			response.setStatus(422);
		}
		return page(model, done ? "done" : "wrong", to, kind, key);
	}

	private static String page(Model model, String state, String to, String kind, String key) {
		model.addAttribute("state", state);
		model.addAttribute("to", to);
		model.addAttribute("kind", kind);
		model.addAttribute("signature", key);
		return VIEW;
	}

	private static Optional<UUID> person(String to) {
		try {
			return (to.length() == 36) ? Optional.of(UUID.fromString(to)) : Optional.empty();
		}
		catch (IllegalArgumentException ex) {
			return Optional.empty();
		}
	}

}
