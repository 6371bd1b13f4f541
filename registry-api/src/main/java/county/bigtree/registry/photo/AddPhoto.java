package county.bigtree.registry.photo;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.photo.image.Picture;
import county.bigtree.registry.photo.image.ProcessPictures;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes a photo of a tree or of a measurement. It is worked on, and put into the object
 * store if there is one, before the county's head is taken, so that nobody waits for it.
 */
@Service
public class AddPhoto {

	/** Nobody took a photo earlier. */
	private static final LocalDate FIRST_PHOTO = LocalDate.of(1826, 1, 1);

	private final ShowPhotos showing;

	private final TreeDirectory trees;

	private final PhotoLimits limits;

	private final ProcessPictures processing;

	private final KeepPictures keeping;

	private final Recorder recorder;

	AddPhoto(ShowPhotos showing, TreeDirectory trees, PhotoLimits limits, ProcessPictures processing,
			KeepPictures keeping, Recorder recorder) {
		this.showing = showing;
		this.trees = trees;
		this.limits = limits;
		this.processing = processing;
		this.keeping = keeping;
		this.recorder = recorder;
	}

	/**
	 * Takes a photo of a tree that the actor may see, and answers its id.
	 */
	public UUID ofTree(Actor actor, String idOrTag, PhotoBody body, byte[] file) {
		return add(actor, this.showing.tree(idOrTag, actor), null, body, file);
	}

	/**
	 * Takes a photo of a measurement that the actor filed or may sign off on, and answers
	 * its id.
	 */
	public UUID ofMeasurement(Actor actor, UUID measurement, PhotoBody body, byte[] file) {
		return add(actor, this.showing.measured(measurement, actor), measurement, body, file);
	}

	private UUID add(Actor actor, TreeDirectory.KnownTree tree, @Nullable UUID measurement, PhotoBody body,
			byte[] file) {
		if (!actor.isVolunteerIn(tree.county()) && !this.trees.mayVerify(actor, tree)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only volunteers of the county may send photos.");
		}
		this.limits.requireRoom(actor.id(), tree.id(), measurement, file.length);
		List<KeepPictures.Salted> pictures = this.keeping.prepare(this.processing.process(file));
		return this.recorder.record(actor, tree, measurement, body, pictures, file.length);
	}

	/**
	 * Records a photo whose pictures are made and prepared.
	 */
	@Component
	static class Recorder {

		private final ChangeAtTree changes;

		private final Facts facts;

		private final Texts texts;

		private final KeepPictures keeping;

		private final PhotoLimits limits;

		Recorder(ChangeAtTree changes, Facts facts, Texts texts, KeepPictures keeping, PhotoLimits limits) {
			this.changes = changes;
			this.facts = facts;
			this.texts = texts;
			this.keeping = keeping;
			this.limits = limits;
		}

		@Transactional
		UUID record(Actor actor, TreeDirectory.KnownTree tree, @Nullable UUID measurement, PhotoBody body,
				List<KeepPictures.Salted> pictures, int received) {
			Change change = this.changes.open(tree);
			requireTaken(body.takenOn(), change.today());
			this.limits.requireRoom(actor.id(), tree.id(), measurement, received);
			UUID id = Uuid7.next();
			Picture full = pictures.get(pictures.size() - 1).picture();
			this.facts.append(change, FactTable.PHOTO, "id", id, "tree", tree.id(), "measurement", measurement, "shows",
					body.shows().word(), "taken_on", body.takenOn(), "words", this.texts.keep(change, body.text()),
					"credit", this.texts.keep(change, body.credit()), "by_person", actor.id(), "width", full.width(),
					"height", full.height(), "received_bytes", received, "digest", KeepPictures.digest(pictures));
			this.keeping.keep(id, pictures);
			this.changes.close(change, "photo-added", actor.id());
			return id;
		}

		private static void requireTaken(@Nullable LocalDate day, LocalDate today) {
			if (day != null && (day.isBefore(FIRST_PHOTO) || day.isAfter(today))) {
				throw Problem.invalid("#/takenOn", "out-of-range",
						"must be from %s to today, %s, but is %s".formatted(FIRST_PHOTO, today, day));
			}
		}

	}

}
