package county.bigtree.registry.photo;

import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Decides whether everybody may see a photo. Two people look at it, who sent it and who
 * passes it, unless a coordinator sent it.
 */
@Service
public class DecidePhoto {

	private static final int LONGEST_REASON = 1000;

	private final ShowPhotos showing;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final Facts facts;

	private final Texts texts;

	DecidePhoto(ShowPhotos showing, TreeDirectory trees, ChangeAtTree changes, Facts facts, Texts texts) {
		this.showing = showing;
		this.trees = trees;
		this.changes = changes;
		this.facts = facts;
		this.texts = texts;
	}

	/**
	 * Decides.
	 * @param text what there is to see, in place of what was said of it, or null to leave
	 * that; a photo that is passed must have such words
	 * @param unchanged told its revision under the lock; refuses a stale one
	 */
	@Transactional
	public void decide(Actor actor, UUID id, Decision decision, @Nullable String text, @Nullable String reason,
			LongConsumer unchanged) {
		String words = PhotoBody.plain("#/text", text, PhotoBody.LONGEST_TEXT);
		String why = PhotoBody.plain("#/reason", reason, LONGEST_REASON);
		Change change = this.changes.openAnyhow(this.trees.get(this.showing.get(id, actor).photo().tree()));
		Photo photo = this.showing.get(id, actor).photo();
		unchanged.accept(photo.revision());
		requireMay(actor, decision, photo);
		if (!decision.isFor(photo.status())) {
			throw Problem.of(ProblemType.CONFLICT,
					"The decision %s is not for a photo that is %s.".formatted(decision.word(), photo.status()));
		}
		if (decision.needsReason() && why == null) {
			throw Problem.invalid("#/reason", "missing", "say why, for who sent it");
		}
		if (decision == Decision.PASS) {
			requirePassable(photo, words);
		}
		this.facts.append(change, FactTable.PHOTO_DECISION, "id", Uuid7.next(), "photo", id, "decision",
				decision.word(), "words", (decision == Decision.PASS) ? this.texts.keep(change, words) : null, "reason",
				this.texts.keep(change, why), "by_person", actor.id());
		this.changes.close(change, "photo-" + decision.word(), actor.id());
	}

	private static void requireMay(Actor actor, Decision decision, Photo photo) {
		boolean own = actor.id().equals(photo.by());
		boolean may = switch (decision) {
			case WITHDRAW -> own;
			case PASS -> actor.isVerifierIn(photo.county()) && (!own || actor.isCoordinatorOf(photo.county()));
			case REFUSE, TAKE_BACK -> actor.isVerifierIn(photo.county());
		};
		if (!may) {
			throw Problem.of(ProblemType.NOT_ALLOWED, (decision == Decision.WITHDRAW)
					? "Only who sent a photo may withdraw it."
					: "Only verifiers and coordinators of the county decide on photos, and verifiers on those of others.");
		}
	}

	private static void requirePassable(Photo photo, @Nullable String words) {
		if (!photo.shows().isForAll()) {
			throw Problem.of(ProblemType.REFUSED,
					"A photo of a sheet of paper is never published: it stays with those who work on the tree.");
		}
		if (words == null && photo.words() == null) {
			throw Problem.invalid("#/text", "missing", "say what there is to see, in words for those who can't see it");
		}
	}

}
