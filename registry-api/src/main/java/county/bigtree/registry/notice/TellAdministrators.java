package county.bigtree.registry.notice;

import java.time.Instant;
import java.util.Map;

import county.bigtree.registry.journal.SqlTime;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Queues what all administrators are told of the service as a whole.
 */
@Service
public class TellAdministrators {

	private static final String ADMINISTRATORS = """
			select a.person as recipient, cast(:about as text) as subject, cast(null as text) as county,
			  cast(null as uuid) as tree, '/desk/upkeep' as page, cast(:word as text) as detail
			from role_assignment a where a.role = 'administrator' and a.from_at <= :instant
			  and (a.until_at is null or a.until_at > :instant)""";

	private final NoticeQueue queue;

	TellAdministrators(NoticeQueue queue) {
		this.queue = queue;
	}

	/**
	 * Queues it, once for what it is about, in the transaction of the caller.
	 * @param about what no other notice of the kind is about
	 * @param word that says which words to use
	 * @return how many were new
	 */
	@Transactional(propagation = Propagation.MANDATORY)
	public int queue(NoticeKind kind, String about, String word, Instant now) {
		return this.queue.put(kind, ADMINISTRATORS, Map.of("about", about, "word", word, "instant", SqlTime.of(now)),
				now);
	}

}
