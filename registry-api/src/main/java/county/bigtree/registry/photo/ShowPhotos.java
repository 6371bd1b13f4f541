package county.bigtree.registry.photo;

import java.util.List;
import java.util.Objects;
import java.util.UUID;

import county.bigtree.registry.lookup.ReadTrees;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Shows photos to those who may see them: one that is published to everybody, all others
 * to who sent them and to those who may act as a verifier at the tree. To anybody else
 * they are not there.
 */
@Service
public class ShowPhotos {

	private final Photos photos;

	private final KeepPictures pictures;

	private final TreeDirectory trees;

	private final ReadTrees shownTrees;

	private final ReadMeasurements measurements;

	private final TransactionTemplate reading;

	ShowPhotos(Photos photos, KeepPictures pictures, TreeDirectory trees, ReadTrees shownTrees,
			ReadMeasurements measurements, PlatformTransactionManager transactions) {
		this.photos = photos;
		this.pictures = pictures;
		this.trees = trees;
		this.shownTrees = shownTrees;
		this.measurements = measurements;
		this.reading = new TransactionTemplate(transactions);
		this.reading.setReadOnly(true);
	}

	/**
	 * A photo.
	 * @throws Problem of not being found where there is none, or none for the asker
	 */
	@Transactional(readOnly = true)
	public Seen get(UUID id, @Nullable Actor actor) {
		return seen(this.photos.get(id), actor);
	}

	/**
	 * The picture of a photo.
	 * @param width the least width wanted, or null for the widest
	 */
	public byte[] picture(UUID id, @Nullable Integer width, @Nullable Actor actor) {
		return this.pictures.open(kept(id, width, actor))
			// It was moved or erased while it was being looked for.
			.or(() -> this.pictures.open(kept(id, width, actor)))
			.orElseThrow(() -> new IllegalStateException(
					"A picture of the photo " + id + " is not in the object store as it was put there"));
	}

	private KeepPictures.Kept kept(UUID id, @Nullable Integer width, @Nullable Actor actor) {
		return Objects.requireNonNull(this.reading.execute((status) -> {
			get(id, actor);
			return this.pictures.find(id, width).orElseThrow(Photos::unknown);
		}));
	}

	/** Those photos of a tree that the asker may see. */
	@Transactional(readOnly = true)
	public List<Seen> ofTree(String idOrTag, @Nullable Actor actor) {
		TreeDirectory.KnownTree tree = tree(idOrTag, actor);
		boolean insider = actor != null && this.trees.mayVerify(actor, tree);
		return this.photos.ofTree(tree.kept())
			.stream()
			.filter((one) -> insider || one.published() || isBy(one, actor))
			.map((one) -> new Seen(one, insider, insider || isBy(one, actor)))
			.toList();
	}

	/** All photos of a measurement, for who filed it and verifiers at the tree. */
	@Transactional(readOnly = true)
	public List<Seen> ofMeasurement(UUID id, Actor actor) {
		TreeDirectory.KnownTree tree = measured(id, actor);
		boolean insider = this.trees.mayVerify(actor, tree);
		return this.photos.ofMeasurement(id).stream().map((one) -> new Seen(one, insider, true)).toList();
	}

	/** Those that the asker sent. */
	@Transactional(readOnly = true)
	public List<Seen> own(Actor actor, UUID after, int limit) {
		return this.photos.by(actor.id(), after, limit).stream().map((one) -> seen(one, actor)).toList();
	}

	/** All photos of a county, for its verifiers. */
	@Transactional(readOnly = true)
	public List<Seen> ofCounty(String county, @Nullable String status, UUID after, int limit) {
		return this.photos.ofCounty(county, status, after, limit)
			.stream()
			.map((one) -> new Seen(one, true, true))
			.toList();
	}

	/**
	 * The tree with this id or tag, if it is no secret to the asker.
	 * @throws Problem of not being found
	 */
	TreeDirectory.KnownTree tree(String idOrTag, @Nullable Actor actor) {
		TreeDirectory.KnownTree tree = this.trees.getShown(idOrTag, actor);
		if (this.shownTrees.find(tree.id().toString(), actor).isEmpty()
				&& (actor == null || !this.trees.mayVerify(actor, tree))) {
			throw Problem.notFound("No tree has this id or tag.");
		}
		return tree;
	}

	/**
	 * The tree of a measurement that the asker filed or may sign off on.
	 * @throws Problem of the measurement not being found
	 */
	TreeDirectory.KnownTree measured(UUID id, Actor actor) {
		ReadMeasurements.Measurement measurement = this.measurements.get(id);
		TreeDirectory.KnownTree tree = this.trees.get(measurement.tree());
		if (!measurement.filedBy().equals(actor.id()) && !this.trees.mayVerify(actor, tree)) {
			throw Problem.notFound("No measurement has this id.");
		}
		return tree;
	}

	private Seen seen(Photo photo, @Nullable Actor actor) {
		boolean insider = actor != null && this.trees.mayVerify(actor, this.trees.get(photo.tree()));
		if (!insider && !photo.published() && !isBy(photo, actor)) {
			throw Photos.unknown();
		}
		return new Seen(photo, insider, insider || isBy(photo, actor));
	}

	private static boolean isBy(Photo photo, @Nullable Actor actor) {
		return actor != null && actor.id().equals(photo.by());
	}

	/**
	 * A photo with what the asker is to it.
	 *
	 * @param insider whether they may act as a verifier at the tree
	 * @param involved whether they may, or sent it
	 */
	public record Seen(Photo photo, boolean insider, boolean involved) {
	}

}
