package county.bigtree.registry.upkeep;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.notice.NoticeKind;
import county.bigtree.registry.notice.TellAdministrators;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * What is wrong, from when it was found to when it was found mended. The administrators
 * are told once, when it begins, in the transaction that notes it; so is the log.
 */
@Component
public class Troubles {

	/** Of what a node sees, after which it is over where the node is gone. */
	static final Duration UNSEEN = Duration.ofHours(1);

	private static final Logger logger = LoggerFactory.getLogger(Troubles.class);

	private final JdbcClient jdbc;

	private final TellAdministrators tell;

	private final RegisterClock clock;

	Troubles(JdbcClient jdbc, TellAdministrators tell, RegisterClock clock) {
		this.jdbc = jdbc;
		this.tell = tell;
		this.clock = clock;
	}

	/** Notes that it is so. */
	@Transactional
	public void found(TroubleKind kind, String place, @Nullable String detail) {
		Instant now = this.clock.now();
		if (!begin(kind, place, detail, now)) {
			this.jdbc.sql("""
					update upkeep_trouble set seen_at = :now, detail = :detail
					where kind = :kind and place = :place and over_at is null""")
				.param("now", SqlTime.of(now))
				.param("detail", detail, java.sql.Types.VARCHAR)
				.param("kind", kind.code())
				.param("place", place)
				.update();
		}
	}

	private boolean begin(TroubleKind kind, String place, @Nullable String detail, Instant now) {
		Optional<UUID> begun = this.jdbc.sql("""
				insert into upkeep_trouble (id, kind, place, since, seen_at, detail)
				values (:id, :kind, :place, :now, :now, :detail)
				on conflict (kind, place) where over_at is null do nothing returning id""")
			.param("id", Uuid7.next())
			.param("kind", kind.code())
			.param("place", place)
			.param("now", SqlTime.of(now))
			.param("detail", detail, java.sql.Types.VARCHAR)
			.query(UUID.class)
			.optional();
		begun.ifPresent((id) -> {
			logger.error("Trouble: {} {} {}", kind.code(), place, (detail != null) ? detail : "");
			this.tell.queue(NoticeKind.UPKEEP_TROUBLE, id.toString(), kind.code(), now);
		});
		return begun.isPresent();
	}

	/** Notes that it is not so, or not any more. */
	@Transactional
	public void mended(TroubleKind kind, String place) {
		int over = this.jdbc
			.sql("update upkeep_trouble set over_at = ? where kind = ? and place = ? and over_at is null")
			.params(SqlTime.of(this.clock.now()), kind.code(), place)
			.update();
		if (over > 0) {
			logger.info("Mended: {} {}", kind.code(), place);
		}
	}

	/** Ends what a node saw that looks no more. */
	@Transactional
	public void forgetUnseen(TroubleKind kind) {
		Instant now = this.clock.now();
		this.jdbc.sql("update upkeep_trouble set over_at = ? where kind = ? and seen_at < ? and over_at is null")
			.params(SqlTime.of(now), kind.code(), SqlTime.of(now.minus(UNSEEN)))
			.update();
	}

	/** Those that are not over, the oldest first. */
	@Transactional(readOnly = true)
	public List<Trouble> open() {
		return this.jdbc.sql(
				"select kind, place, since, detail from upkeep_trouble where over_at is null order by since, kind, place")
			.query(Trouble.class)
			.list();
	}

}
