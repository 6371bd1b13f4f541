package county.bigtree.registry.notice;

import java.util.List;

import org.springframework.stereotype.Component;

/**
 * Writes the letter of a notice that was taken.
 */
@Component
class WriteLetter {

	private final Notices notices;

	private final NoticeWords words;

	private final Gathering gathering;

	private final NoticeLinks links;

	WriteLetter(Notices notices, NoticeWords words, Gathering gathering, NoticeLinks links) {
		this.notices = notices;
		this.words = words;
		this.gathering = gathering;
		this.links = links;
	}

	/**
	 * The letter, with links beneath the address at which people reach the service.
	 */
	Letter letter(Outbox.Taken taken, Mailing mailing) {
		Notice notice = this.notices.get(taken.id());
		List<String> lines = this.gathering.lines(notice);
		return new Letter(taken.id(), taken.email(), taken.name(), this.words.title(notice),
				this.words.say("notice.greeting", Mailing.oneLine(taken.name())), this.words.text(notice), lines,
				mailing.link(notice.page()), this.words.link(notice), this.words.why(notice),
				mailing.link(this.links.off(notice.recipient(), notice.kind())), this.words.say("notice.off"));
	}

}
