package county.bigtree.registry.edition;

import java.util.HexFormat;
import java.util.Map;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.registry.edition.EditionFiles.Form;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Publishes editions, and notes what turns out wrong in them. A published edition is
 * never worked out again.
 */
@Service
public class PublishEdition {

	private final Editions editions;

	private final MakeUpList making;

	private final EditionFiles files;

	private final CatchUp catchUp;

	private final Writing writing;

	PublishEdition(Editions editions, MakeUpList making, EditionFiles files, CatchUp catchUp, Writing writing) {
		this.editions = editions;
		this.making = making;
		this.files = files;
		this.catchUp = catchUp;
		this.writing = writing;
	}

	/**
	 * Publishes an edition whose day is past.
	 * @param unchanged told the edition's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void publish(Actor actor, UUID id, LongConsumer unchanged) {
		String county = this.editions.get(id).county();
		requireCoordinator(actor, county);
		this.catchUp.county(county);
		Change change = this.writing.journal().open(county);
		Edition edition = this.editions.get(id);
		unchanged.accept(edition.revision());
		if (edition.publication() != null) {
			throw Problem.of(ProblemType.CONFLICT, "This edition is published already; it is never made up again.");
		}
		if (change.recordedAt().isBefore(edition.closed())) {
			throw Problem.of(ProblemType.REFUSED,
					"The list is that of the end of %s: it can be published from the day after on."
						.formatted(edition.closesOn()));
		}
		EditionList list = this.making.of(edition);
		record(change, actor, edition, list);
		this.writing.journal().close(change, "edition-published", actor.id());
	}

	private void record(Change change, Actor actor, Edition edition, EditionList list) {
		Map<Form, byte[]> written = this.files.write(list);
		byte[] pdf = written.get(Form.PDF);
		this.writing.facts()
			.append(change, FactTable.EDITION_PUBLICATION, "edition", edition.id(), "known_at", list.knownAt(),
					"head_seq", list.headSeq(), "head_chain", HexFormat.of().parseHex(list.headHash()), "list_sha256",
					digest(written, Form.LIST), "csv_sha256", digest(written, Form.CSV), "pdf_sha256",
					(pdf != null) ? EditionFiles.sha256(pdf) : null, "published_by", actor.id());
		this.files.keep(edition.id(), written);
	}

	private static byte[] digest(Map<Form, byte[]> files, Form form) {
		return EditionFiles.sha256(files.getOrDefault(form, new byte[0]));
	}

	/**
	 * Notes an erratum to a published edition, and answers its id.
	 * @param tree the id or tag of the tree that it concerns, or null
	 */
	@Transactional
	public UUID note(Actor actor, UUID id, @Nullable String tree, String text) {
		Edition edition = this.editions.get(id);
		requireCoordinator(actor, edition.county());
		UUID concerned = (tree != null) ? concerned(tree) : null;
		Change change = this.writing.journal().open(edition.county());
		if (this.editions.get(id).publication() == null) {
			throw Problem.of(ProblemType.REFUSED, "Nothing is published yet that could be wrong.");
		}
		UUID erratum = Uuid7.next();
		this.writing.facts()
			.append(change, FactTable.EDITION_ERRATUM, "id", erratum, "edition", id, "tree", concerned, "words",
					this.writing.texts().keepAlways(change, text), "by_person", actor.id());
		this.writing.journal().close(change, "erratum-noted", actor.id());
		return erratum;
	}

	private UUID concerned(String tree) {
		return this.writing.trees()
			.find(tree)
			.map(TreeDirectory.KnownTree::id)
			.orElseThrow(() -> Problem.invalid("#/tree", "unknown", "no tree has this id or tag"));
	}

	private static void requireCoordinator(Actor actor, String county) {
		if (!actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Editions are for the county's coordinators.");
		}
	}

	/**
	 * What writes.
	 */
	@Component("editionWriting")
	record Writing(Journal journal, Facts facts, Texts texts, TreeDirectory trees) {
	}

}
