package county.bigtree.registry.erasure;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.ErasePieces;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Erases what is kept in words about an owner, the writer of a letter, or somebody for
 * whom a nomination was filed, because they ask for it. That there is an owner, what they
 * consent to and what became of a letter stay on record.
 */
@Service
public class EraseAbout {

	private final Journal journal;

	private final ErasePieces erasing;

	private final JdbcClient jdbc;

	EraseAbout(Journal journal, ErasePieces erasing, JdbcClient jdbc) {
		this.journal = journal;
		this.erasing = erasing;
		this.jdbc = jdbc;
	}

	/**
	 * Erases the words, and answers how many pieces those were. Where none are left,
	 * nothing is recorded.
	 * @throws Problem of not being found, also for who is no coordinator of the county
	 */
	@Transactional
	public int erase(Actor actor, Whom whom, UUID id) {
		String county = this.jdbc.sql(whom.county())
			.param("id", id)
			.query(String.class)
			.optional()
			.filter(actor::isCoordinatorOf)
			.orElseThrow(() -> Problem.notFound(whom.unknown()));
		this.journal.lock(county);
		List<UUID> pieces = this.jdbc.sql(whom.pieces())
			.param("id", id)
			.query(UUID.class)
			.list()
			.stream()
			.filter(java.util.Objects::nonNull)
			.filter(this.erasing::isThere)
			.toList();
		if (pieces.isEmpty()) {
			return 0;
		}
		Change change = this.journal.open(county);
		int erased = this.erasing.erase(change, pieces, actor.id());
		(whom == Whom.OWNER ? ownersSharing(pieces, id) : List.of(id)).forEach(this::forgetAnswers);
		this.journal.close(change, "words-erased", actor.id());
		return erased;
	}

	/** The owner, and on the other tree of a split the same with the same words. */
	private List<UUID> ownersSharing(List<UUID> pieces, UUID id) {
		return this.jdbc.sql("select id from tree_owner where id = :id or name in (:pieces) or contact in (:pieces)")
			.param("id", id)
			.param("pieces", pieces)
			.query(UUID.class)
			.list();
	}

	/**
	 * Answers that are kept for those who ask again tell the words too: all are dropped
	 * that tell of whom they concern, whoever got them.
	 */
	private void forgetAnswers(UUID about) {
		this.jdbc.sql("""
				delete from keyed_answer where strpos(path, :about) > 0 or strpos(coalesce(location, ''), :about) > 0
				  or position(convert_to(:about, 'UTF8') in body) > 0""").param("about", about.toString()).update();
	}

	/**
	 * About whom words are erased.
	 */
	public enum Whom {

		/** Of a split, an owner stands on both trees with the same words. */
		OWNER("No owner has this id.", """
				select l.stands_in from tree_owner o join lateral (select stands_in from location where tree = o.tree
				  order by recorded_at desc limit 1) l on true where o.id = :id""", """
				select name from tree_owner where id = :id and name is not null
				union select contact from tree_owner where id = :id and contact is not null
				union select remarks from consent where owner = :id and remarks is not null
				union select reason from owner_end where owner = :id and reason is not null"""),

		LETTER_WRITER("No letter has this id.", "select county from letter where id = :id", """
				select words from letter where id = :id
				union select contact from letter where id = :id and contact is not null
				union select answer from letter_outcome where letter = :id and answer is not null"""),

		FINDER("No nomination has this id.", """
				select l.stands_in from nomination n join lateral (select stands_in from location where tree = n.tree
				  order by recorded_at desc limit 1) l on true where n.id = :id and n.filed_for is not null""", """
				select filed_for from nomination where id = :id
				union select credit from nomination where id = :id and credit is not null""");

		private final String unknown;

		private final String county;

		private final String pieces;

		Whom(String unknown, String county, String pieces) {
			this.unknown = unknown;
			this.county = county;
			this.pieces = pieces;
		}

		String unknown() {
			return this.unknown;
		}

		String county() {
			return this.county;
		}

		String pieces() {
			return this.pieces;
		}

	}

}
