package county.bigtree.registry.notice.web;

import java.time.Instant;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.notice.Notice;
import county.bigtree.registry.notice.StuckNotices;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * The notices that could not be sent.
 */
@RestController
@RequestMapping("/api/v1/notices/stuck")
@Tag(name = "Notices", description = "What people are told, on the pages and by e-mail.")
class StuckController {

	private static final int SHOWN = 200;

	private final StuckNotices stuck;

	StuckController(StuckNotices stuck) {
		this.stuck = stuck;
	}

	@GetMapping
	@Access(Who.ADMINISTRATOR)
	@Operation(operationId = "listStuckNotices",
			summary = "The notices that could not be sent for half an hour or more, oldest first, 200 at most")
	Page<StuckNotice> list() {
		return Page.whole(this.stuck.list(SHOWN).stream().map(StuckNotice::from).toList());
	}

	@PostMapping("/retry")
	@Access(Who.ADMINISTRATOR)
	@Unkeyed
	@Operation(operationId = "retryStuckNotices", summary = "Try to send all of them again")
	StuckDone retry() {
		return new StuckDone(this.stuck.retry());
	}

	@PostMapping("/dismissal")
	@Access(Who.ADMINISTRATOR)
	@Unkeyed
	@Operation(operationId = "dismissStuckNotices", summary = "Leave all of them on the pages, and send them no more")
	StuckDone dismiss() {
		return new StuckDone(this.stuck.dismiss());
	}

	/**
	 * A notice that could not be sent.
	 *
	 * @param mail {@code waiting} for the next try, or {@code failed} for good
	 * @param error what kind of failure the last one was
	 */
	record StuckNotice(UUID id, Instant at, String kind, UUID recipient, int tries, String mail,
			@Nullable String error) {

		static StuckNotice from(Notice notice) {
			return new StuckNotice(notice.id(), notice.queuedAt(), notice.kind().code(), notice.recipient(),
					notice.tries(), notice.mail(), notice.lastError());
		}

	}

	/** How many notices that was. */
	record StuckDone(int notices) {
	}

}
