package county.bigtree.registry.notice;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What somebody was told, and what of it they want by e-mail.
 */
@Service
public class OwnNotices {

	private final Notices notices;

	private final NoticeLinks links;

	private final Mailing mailing;

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	OwnNotices(Notices notices, NoticeLinks links, Mailing mailing, JdbcClient jdbc, RegisterClock clock) {
		this.notices = notices;
		this.links = links;
		this.mailing = mailing;
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/** Whether this service sends mails at all. */
	public boolean areMailed() {
		return this.mailing.isOn();
	}

	/**
	 * The actor's notices, newest first.
	 * @param before the last one seen, or null to begin
	 */
	@Transactional(readOnly = true)
	public List<Notice> list(Actor actor, @Nullable UUID before, int limit) {
		return this.notices.of(actor.id(), before, limit);
	}

	/**
	 * The kinds that the actor may get, each with whether it is wanted by e-mail.
	 */
	@Transactional(readOnly = true)
	public Map<NoticeKind, Boolean> wanted(Actor actor) {
		List<String> refused = this.jdbc.sql("select kind from notice_refusal where person = ?")
			.param(actor.id())
			.query(String.class)
			.list();
		Map<NoticeKind, Boolean> wanted = new EnumMap<>(NoticeKind.class);
		for (NoticeKind kind : NoticeKind.values()) {
			if (isFor(actor, kind)) {
				wanted.put(kind, !refused.contains(kind.code()));
			}
		}
		return wanted;
	}

	private static boolean isFor(Actor actor, NoticeKind kind) {
		if (NoticeKind.OF_ADMINISTRATORS.contains(kind)) {
			return actor.administrator();
		}
		return actor.isAnywhere(Role.COORDINATOR) || !NoticeKind.OF_COORDINATORS.contains(kind);
	}

	/**
	 * Has exactly these kinds mailed, of those that the actor may get.
	 */
	@Transactional
	public void choose(Actor actor, Set<NoticeKind> kinds) {
		wanted(actor).forEach((kind, present) -> {
			if (kinds.contains(kind)) {
				this.jdbc.sql("delete from notice_refusal where person = ? and kind = ?")
					.params(actor.id(), kind.code())
					.update();
			}
			else {
				refuse(actor.id(), kind);
			}
		});
	}

	/** Whether a link to have no more of a kind is one that was sent out. */
	@Transactional
	public boolean isSigned(UUID person, NoticeKind kind, String key) {
		return this.links.isSigned(person, kind.code(), key);
	}

	/**
	 * Has no more of a kind mailed, by a link that was sent out. Doing it twice changes
	 * nothing.
	 * @return whether the link is one that was sent out
	 */
	@Transactional
	public boolean refuse(UUID person, NoticeKind kind, String key) {
		if (!this.links.isSigned(person, kind.code(), key)) {
			return false;
		}
		refuse(person, kind);
		return true;
	}

	private void refuse(UUID person, NoticeKind kind) {
		this.jdbc.sql("""
				insert into notice_refusal (person, kind, since) select id, :kind, :now from person where id = :person
				on conflict do nothing""")
			.param("person", person)
			.param("kind", kind.code())
			.param("now", SqlTime.of(this.clock.now()))
			.update();
	}

}
