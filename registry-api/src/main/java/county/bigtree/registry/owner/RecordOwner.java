package county.bigtree.registry.owner;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Appends owners and what they say, within a change that the caller has begun and ends. A
 * new owner starts without any consent.
 */
@Component
public class RecordOwner {

	private final Facts facts;

	private final Texts texts;

	private final JdbcClient jdbc;

	RecordOwner(Facts facts, Texts texts, JdbcClient jdbc) {
		this.facts = facts;
		this.texts = texts;
		this.jdbc = jdbc;
	}

	/**
	 * Records an owner and answers the id.
	 * @param pointer where the owner stands in the request
	 */
	public UUID owner(Change change, UUID tree, OwnerBody body, String pointer) {
		requirePerson(body.person(), pointer);
		UUID id = Uuid7.next();
		this.facts.append(change, FactTable.TREE_OWNER, "id", id, "tree", tree, "person", body.person(), "name",
				this.texts.keep(change, body.name()), "contact", this.texts.keep(change, body.contact()));
		return id;
	}

	/**
	 * Records what an owner says for each of the purposes.
	 * @param by who took it down
	 */
	public void said(Change change, UUID owner, ConsentBody body, UUID by) {
		LocalDate givenOn = (body.givenOn() != null) ? body.givenOn() : change.today();
		requireDays(givenOn, body, change.today());
		UUID remarks = this.texts.keep(change, body.remarks());
		for (String purpose : new LinkedHashSet<>(body.purposes())) {
			this.facts.append(change, FactTable.CONSENT, "id", Uuid7.next(), "owner", owner, "purpose", purpose,
					"given", body.given(), "how", body.how(), "given_on", givenOn, "until_on", body.until(),
					"by_person", by, "remarks", remarks);
		}
	}

	/**
	 * Records that somebody owns the tree no more.
	 */
	void ended(Change change, UUID owner, UUID by, String reason) {
		this.facts.append(change, FactTable.OWNER_END, "owner", owner, "by_person", by, "reason",
				this.texts.keep(change, reason));
	}

	/**
	 * Records the owners of a tree as those of one that is split off from it: it stands
	 * on their ground, and of it they have said nothing yet.
	 */
	public void split(Change change, UUID tree, UUID newTree) {
		List<Standing> owners = this.jdbc.sql("""
				select o.id, o.person, o.name, o.contact from tree_owner o
				where o.tree in (select tree_family(kept_tree(?), 'infinity'))
				  and not exists (select from owner_end where owner = o.id) order by o.id""")
			.param(tree)
			.query(Standing.class)
			.list();
		owners.forEach((one) -> this.facts.append(change, FactTable.TREE_OWNER, "id", Uuid7.next(), "tree", newTree,
				"person", one.person(), "name", one.name(), "contact", one.contact(), "split_from", one.id()));
	}

	/**
	 * Refuses the id of nobody in the register.
	 * @param pointer where the person is named in the request
	 */
	public void requirePerson(@Nullable UUID person, String pointer) {
		boolean unknown = person != null && !this.jdbc.sql("select exists (select from person where id = ?)")
			.param(person)
			.query(Boolean.class)
			.single();
		if (unknown) {
			throw Problem.invalid(pointer + "/person", "unknown", "no person has this id");
		}
	}

	private static void requireDays(LocalDate givenOn, ConsentBody body, LocalDate today) {
		if (givenOn.isAfter(today)) {
			throw Problem.invalid("#/givenOn", "out-of-range", "must not be after today, " + today);
		}
		LocalDate until = body.until();
		if (until != null && !body.given()) {
			throw Problem.invalid("#/until", "contradicts", "only a consent runs out, a refusal does not");
		}
		if (until != null && until.isBefore(givenOn)) {
			throw Problem.invalid("#/until", "out-of-range", "must not be before the day it was given, " + givenOn);
		}
	}

	private record Standing(UUID id, @Nullable UUID person, @Nullable UUID name, @Nullable UUID contact) {
	}

}
