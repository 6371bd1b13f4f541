package county.bigtree.registry.notice.web;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.notice.Notice;
import county.bigtree.registry.notice.NoticeKind;
import county.bigtree.registry.notice.NoticeWords;
import county.bigtree.registry.notice.OwnNotices;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * What somebody was told, and what of it they want by e-mail.
 */
@RestController
@RequestMapping("/api/v1/people/me")
@Tag(name = "Notices", description = "What people are told, on the pages and by e-mail.")
class NoticeController {

	private static final String LIST = "notices";

	private final OwnNotices notices;

	private final NoticeWords words;

	NoticeController(OwnNotices notices, NoticeWords words) {
		this.notices = notices;
		this.words = words;
	}

	@GetMapping("/notices")
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "listOwnNotices", summary = "What you were told, newest first")
	Page<NoticeJson> list(Paging paging, Actor actor) {
		UUID before = paging.cursor(LIST, 1).map((cursor) -> cursor.uuid(0)).orElse(null);
		List<Notice> found = this.notices.list(actor, before, paging.oneMore());
		return Page.cut(found, paging, this::json, (last) -> Cursor.of(LIST, last.id()));
	}

	@GetMapping("/notice-settings")
	@Access(value = Who.SIGNED_IN, account = true)
	@Operation(operationId = "getNoticeSettings", summary = "What you want to be told by e-mail")
	MailSettings settings(Actor actor) {
		return new MailSettings(this.notices.areMailed(),
				this.notices.wanted(actor)
					.entrySet()
					.stream()
					.map((kind) -> new MailSetting(kind.getKey().code(), kind.getValue()))
					.toList());
	}

	@PutMapping("/notice-settings")
	@Access(value = Who.SIGNED_IN, account = true)
	@Operation(operationId = "chooseNotices", summary = "Choose what you want to be told by e-mail")
	MailSettings choose(@Valid @RequestBody MailChoice choice, Actor actor) {
		Set<NoticeKind> kinds = new HashSet<>();
		for (int index = 0; index < choice.mail().size(); index++) {
			String pointer = "#/mail/" + index;
			kinds.add(NoticeKind.find(choice.mail().get(index))
				.orElseThrow(() -> Problem.invalid(pointer, "unknown", "is no kind of notice")));
		}
		this.notices.choose(actor, kinds);
		return settings(actor);
	}

	private NoticeJson json(Notice notice) {
		return new NoticeJson(notice.id(), notice.queuedAt(), notice.kind().code(), notice.county(), notice.tag(),
				this.words.title(notice), this.words.text(notice), notice.page(), notice.mail());
	}

	/**
	 * Something that somebody was told.
	 *
	 * @param county null where it is about the service as a whole
	 * @param tag of the tree that it is about, or null
	 * @param page the path on which it stands in full
	 * @param mail {@code waiting} to be sent, {@code sent}, {@code failed}, or
	 * {@code none}: on the pages only
	 */
	record NoticeJson(UUID id, Instant at, String kind, @Nullable String county, @Nullable String tag, String title,
			String text, String page, String mail) {
	}

	/**
	 * What is sent by e-mail.
	 *
	 * @param mailed whether this service sends mails at all
	 */
	record MailSettings(boolean mailed, List<MailSetting> kinds) {
	}

	/**
	 * A kind of notice.
	 *
	 * @param mail whether it is wanted by e-mail
	 */
	record MailSetting(String kind, boolean mail) {
	}

	/**
	 * What is wanted by e-mail.
	 *
	 * @param mail all kinds that are; of the others there is no mail
	 */
	record MailChoice(@NotNull @Size(max = 20) List<@Size(max = 40) @NotNull String> mail) {
	}

}
