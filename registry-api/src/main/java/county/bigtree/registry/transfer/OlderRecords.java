package county.bigtree.registry.transfer;

import java.util.UUID;

import county.bigtree.registry.opening.Opened;
import county.bigtree.registry.opening.Openings;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What older records say of trees, for the coordinators of the county where each stands.
 */
@Service
public class OlderRecords {

	private final TreeDirectory trees;

	private final JdbcClient jdbc;

	private final Openings openings;

	OlderRecords(TreeDirectory trees, JdbcClient jdbc, Openings openings) {
		this.openings = openings;
		this.trees = trees;
		this.jdbc = jdbc;
	}

	/**
	 * The older record of a tree. That it was read is noted.
	 * @throws Problem of not being found, where it has none or the actor may not see it
	 */
	@Transactional
	public OlderRecord get(Actor actor, String idOrTag) {
		return this.trees.find(idOrTag)
			.filter((tree) -> actor.isCoordinatorOf(tree.county()))
			.flatMap((tree) -> this.jdbc.sql("""
					select r.job as import_id, r.row_number, t.file_tag,
					  (select body from text_body where id = o.owner) as owner,
					  (select body from text_body where id = o.contact) as contact,
					  (select body from text_body where id = o.finder) as finder,
					  (select body from text_body where id = o.visit_notes) as visit_notes
					from import_part r join tree t on t.id = r.tree left join older_record o on o.tree = r.tree
					where r.tree = ? and r.brought""")
				.param(tree.id())
				.query(OlderRecord.class)
				.optional()
				.map((record) -> {
					this.openings.note(actor, tree.county(), tree.id(), Opened.OLDER_RECORD, null);
					return record;
				}))
			.orElseThrow(() -> Problem.notFound("No tree with an older record has this id or tag."));
	}

	/**
	 * What the older record says.
	 *
	 * @param importId the import that brought it
	 * @param rowNumber where it stands in the file
	 * @param owner null where it says nothing, or the words were erased
	 */
	public record OlderRecord(UUID importId, int rowNumber, @Nullable String fileTag, @Nullable String owner,
			@Nullable String contact, @Nullable String finder, @Nullable String visitNotes) {
	}

}
