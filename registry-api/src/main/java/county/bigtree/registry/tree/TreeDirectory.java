package county.bigtree.registry.tree;

import java.sql.Types;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Finds trees by id or tag, accepted or not, for those who work on them.
 */
@Component
public class TreeDirectory {

	private static final String TREE = """
			select t.id, t.tag, l.stands_in as county, i.species,
			  exists (select from acceptance a where a.tree = t.id) as accepted,
			  tree_revision(t.id) as revision, kept_tree(t.id) as kept
			from tree t
			join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			""";

	private static final int UUID_LENGTH = 36;

	private final JdbcClient jdbc;

	private final Showings showings;

	private final VerifierAtTree verifiers;

	TreeDirectory(JdbcClient jdbc, Showings showings, VerifierAtTree verifiers) {
		this.verifiers = verifiers;
		this.jdbc = jdbc;
		this.showings = showings;
	}

	/**
	 * The tree with this id or tag.
	 */
	public Optional<KnownTree> find(String idOrTag) {
		return this.jdbc.sql(TREE + "where t.tag = :tag or t.id = :id")
			.param("tag", idOrTag)
			.param("id", asId(idOrTag).orElse(null), Types.OTHER)
			.query(KnownTree.class)
			.optional();
	}

	/**
	 * The tree with this id or tag.
	 * @throws Problem of not being found
	 */
	public KnownTree get(String idOrTag) {
		return find(idOrTag).orElseThrow(TreeDirectory::unknown);
	}

	/**
	 * The tree with this id or tag, if it is no secret to the actor: one that an owner
	 * does not let be listed is there for the county's verifiers and its nominator only.
	 * @throws Problem of not being found
	 */
	public KnownTree getShown(String idOrTag, @Nullable Actor actor) {
		KnownTree tree = get(idOrTag);
		if (!isShownTo(actor, tree)) {
			throw unknown();
		}
		return tree;
	}

	private boolean isShownTo(@Nullable Actor actor, KnownTree tree) {
		return actor != null && (mayVerify(actor, tree) || isNominatedBy(actor, tree.id()))
				|| this.showings.isListed(tree.id());
	}

	/**
	 * Whether the actor may act as a verifier at the tree now.
	 */
	public boolean mayVerify(Actor actor, KnownTree tree) {
		return this.verifiers.may(actor, tree.county(), tree.id());
	}

	private boolean isNominatedBy(Actor actor, UUID tree) {
		return this.jdbc.sql("select exists (select from nomination where tree = ? and nominator = ?)")
			.params(tree, actor.id())
			.query(Boolean.class)
			.single();
	}

	/**
	 * Refuses to show more of a tree's place than its owners allow today.
	 */
	void requireOwnersAllow(UUID tree, Disclosure decided) {
		if (decided == Disclosure.EXACT && !this.showings.consent(tree).allowsPlace()) {
			throw Problem.of(ProblemType.REFUSED,
					"Not all owners on record consent to the exact place being published.");
		}
	}

	private static Problem unknown() {
		return Problem.notFound("No tree has this id or tag.");
	}

	public KnownTree get(UUID id) {
		return get(id.toString());
	}

	/**
	 * Whether the tree was taken off the books.
	 */
	boolean takenOff(UUID tree) {
		return this.jdbc.sql("select exists (select from taking_off where tree = ?)")
			.param(tree)
			.query(Boolean.class)
			.single();
	}

	/**
	 * The last day on which the tree, or one merged into it, was measured or seen, or
	 * from which a stem ruling of it holds.
	 */
	Optional<LocalDate> latestDay(UUID tree) {
		return Optional.ofNullable(this.jdbc
			.sql("""
					select greatest((select max(measured_on) from measurement where tree in (select tree_family(:tree, 'infinity'))),
					  (select max(m.measured_on) from assignment a join measurement m on m.id = a.measurement
					    where a.tree in (select tree_family(:tree, 'infinity'))),
					  (select max(observed_on) from condition_report where tree in (select tree_family(:tree, 'infinity'))),
					  (select max(began_on) from stem_ruling where tree in (select tree_family(:tree, 'infinity'))))""")
			.param("tree", tree)
			.query(LocalDate.class)
			.single());
	}

	/**
	 * Whether the actor owns the tree: as a person of the register, or under the name
	 * that the actor is credited by.
	 */
	public boolean isOwnedBy(Actor actor, UUID tree) {
		return this.jdbc.sql("""
				select o.person, n.body as name from tree_owner o left join text_body n on n.id = o.name
				where o.tree in (select tree_family(kept_tree(?), 'infinity'))
				  and not exists (select from owner_end where owner = o.id)""")
			.param(tree)
			.query(OwnerName.class)
			.list()
			.stream()
			.anyMatch((owner) -> actor.id().equals(owner.person()) || actor.isCalled(owner.name()));
	}

	/**
	 * The id that an address may be.
	 */
	public static Optional<UUID> asId(String address) {
		return (address.length() != UUID_LENGTH) ? Optional.empty() : parse(address);
	}

	private static Optional<UUID> parse(String address) {
		try {
			return Optional.of(UUID.fromString(address));
		}
		catch (IllegalArgumentException ex) {
			return Optional.empty();
		}
	}

	private record OwnerName(@Nullable UUID person, @Nullable String name) {
	}

	/**
	 * A tree on the books.
	 *
	 * @param county the county in which it stands
	 * @param species what it is identified as
	 * @param revision raised by facts of the tree itself
	 * @param kept the tree into which it is merged; itself where it is not
	 */
	public record KnownTree(UUID id, String tag, String county, String species, boolean accepted,
			@JsonIgnore long revision, UUID kept) implements Revisioned {

		/**
		 * Whether it was found to be another tree on the books.
		 */
		public boolean merged() {
			return !this.kept.equals(this.id);
		}

	}

}
