package county.bigtree.registry.nomination;

import java.util.UUID;

import county.bigtree.registry.opening.Opened;
import county.bigtree.registry.opening.Openings;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Tells the county's coordinators for whom a nomination was filed, and notes that it did.
 */
@Service
public class OpenFinder {

	private final NominationBook book;

	private final Openings openings;

	private final JdbcClient jdbc;

	OpenFinder(NominationBook book, Openings openings, JdbcClient jdbc) {
		this.book = book;
		this.openings = openings;
		this.jdbc = jdbc;
	}

	/**
	 * For whom it was filed.
	 * @throws Problem of not being found, also where it was filed for nobody else
	 */
	@Transactional
	public Finder open(Actor actor, UUID id) {
		NominationBook.Nomination nomination = this.book.get(id);
		if (!actor.isCoordinatorOf(nomination.county())) {
			throw Problem.notFound("No nomination has this id.");
		}
		Finder finder = this.jdbc.sql("""
				select b.body::jsonb ->> 'name' as name, b.body::jsonb ->> 'contact' as contact,
				  b.body::jsonb ->> 'credit' as credit, n.credit is not null as consents_to_credit, n.found_by as person
				from nomination n left join text_body b on b.id = n.filed_for
				where n.id = ? and n.filed_for is not null""")
			.param(id)
			.query(Finder.class)
			.optional()
			.orElseThrow(() -> Problem.notFound("This nomination was filed for nobody else."));
		this.openings.note(actor, nomination.county(), nomination.tree(), Opened.FILED_FOR, id);
		return finder;
	}

	/**
	 * Somebody for whom a nomination was filed.
	 *
	 * @param name null where nothing was said, or the words were erased; so the others
	 */
	public record Finder(@Nullable String name, @Nullable String contact, @Nullable String credit,
			boolean consentsToCredit, @Nullable UUID person) {
	}

}
