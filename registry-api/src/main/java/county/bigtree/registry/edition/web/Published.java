package county.bigtree.registry.edition.web;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.edition.Edition;
import county.bigtree.registry.edition.EditionChanges;
import county.bigtree.registry.edition.EditionFiles;
import county.bigtree.registry.edition.Editions;
import county.bigtree.registry.problem.Problem;

import org.springframework.stereotype.Component;

/**
 * What a published edition holds, by its id.
 */
@Component
class Published {

	private final Editions editions;

	private final EditionFiles files;

	private final EditionChanges changes;

	Published(Editions editions, EditionFiles files, EditionChanges changes) {
		this.editions = editions;
		this.files = files;
		this.changes = changes;
	}

	EditionFiles.Shown list(UUID edition) {
		return this.files.list(get(edition));
	}

	EditionFiles.Given file(Edition edition, EditionFiles.Form form) {
		return this.files.file(edition, form);
	}

	EditionChanges.SinceEdition changes(UUID edition) {
		return this.changes.of(get(edition));
	}

	List<Editions.Erratum> errata(UUID edition) {
		return this.editions.errata(this.editions.get(edition).id());
	}

	/**
	 * The edition, once published.
	 * @throws Problem of not being found
	 */
	Edition get(UUID id) {
		Edition edition = this.editions.get(id);
		if (edition.publication() == null) {
			throw Problem.notFound("This edition is not published yet.");
		}
		return edition;
	}

}
