package county.bigtree.domain.standing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * The difference between who held the titles of a species and who holds them now, with
 * the reason for each beginning and end.
 *
 * @param ended titles that ended
 * @param began titles that began
 */
public record TitleChanges(List<Change> ended, List<Change> began) {

	public TitleChanges {
		ended = List.copyOf(ended);
		began = List.copyOf(began);
	}

	/**
	 * Compares the holders before and after one event.
	 * @param before holders before it
	 * @param after holders after it
	 * @param cause the event
	 */
	public static TitleChanges between(Map<UUID, Title> before, Map<UUID, Title> after, Cause cause) {
		List<Change> ended = new ArrayList<>();
		List<Change> began = new ArrayList<>();
		before.forEach((tree, title) -> {
			Title now = after.get(tree);
			if (now == null) {
				ended.add(new Change(tree, title, cause.loss(tree)));
			}
			else if (now != title) {
				TitleReason moved = (now == Title.CHAMPION) ? TitleReason.PROMOTED : TitleReason.DEMOTED;
				ended.add(new Change(tree, title, moved));
				began.add(new Change(tree, now, moved));
			}
		});
		after.forEach((tree, title) -> {
			if (!before.containsKey(tree)) {
				began.add(new Change(tree, title, cause.gain(tree)));
			}
		});
		return new TitleChanges(ended, began);
	}

	/**
	 * Whether nothing changed.
	 */
	public boolean none() {
		return this.ended.isEmpty() && this.began.isEmpty();
	}

	/**
	 * One title's beginning or end.
	 */
	public record Change(UUID tree, Title title, TitleReason reason) {
	}

	/**
	 * What happened: to which trees and why, and what that means to all others.
	 *
	 * @param subjects the trees to which it happened, each with its reason
	 * @param othersLose why a tree to which nothing happened loses a title
	 * @param othersGain why such a tree gains one
	 */
	public record Cause(Map<UUID, TitleReason> subjects, TitleReason othersLose, TitleReason othersGain) {

		public Cause {
			subjects = Map.copyOf(subjects);
		}

		/**
		 * Something that happened to these trees alone.
		 */
		public static Cause to(Map<UUID, TitleReason> subjects) {
			return new Cause(subjects, TitleReason.OVERTAKEN, TitleReason.RIVAL_LEFT);
		}

		/**
		 * New rules for all, together with what happened to some.
		 */
		public static Cause rulebook(Map<UUID, TitleReason> subjects) {
			return new Cause(subjects, TitleReason.RULEBOOK, TitleReason.RULEBOOK);
		}

		/**
		 * Nothing but that the register's own books were put in order.
		 */
		public static Cause recomputed() {
			return new Cause(Map.of(), TitleReason.RECOMPUTED, TitleReason.RECOMPUTED);
		}

		TitleReason loss(UUID tree) {
			TitleReason reason = this.subjects.getOrDefault(tree, this.othersLose);
			return switch (reason) {
				case SIGNED_OFF, SEEN -> TitleReason.OVERTAKEN;
				default -> reason;
			};
		}

		TitleReason gain(UUID tree) {
			TitleReason reason = this.subjects.getOrDefault(tree, this.othersGain);
			return switch (reason) {
				case STALE, DAMAGED, FELL, DIED, REMOVED -> TitleReason.RIVAL_LEFT;
				default -> reason;
			};
		}

	}

}
