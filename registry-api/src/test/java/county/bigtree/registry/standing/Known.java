package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Condition;
import org.jspecify.annotations.Nullable;

/**
 * Everything that a random history has told the register, as plain lists for the oracle.
 */
class Known {

	final List<Told<Rules>> rules = new ArrayList<>();

	final List<Told<NewTree>> trees = new ArrayList<>();

	final List<Told<Named>> names = new ArrayList<>();

	final List<Told<Placed>> places = new ArrayList<>();

	final List<Told<UUID>> accepted = new ArrayList<>();

	final List<Told<Visit>> visits = new ArrayList<>();

	final List<Told<Required>> required = new ArrayList<>();

	final List<Told<Word>> words = new ArrayList<>();

	/** Sign-offs that wait, or waited, for a coordinator. */
	final List<Told<UUID>> deferred = new ArrayList<>();

	final List<Told<UUID>> assented = new ArrayList<>();

	final List<Told<UUID>> revoked = new ArrayList<>();

	final List<Told<UUID>> setAside = new ArrayList<>();

	final List<Told<Seen>> seen = new ArrayList<>();

	final List<Told<Eligible>> eligible = new ArrayList<>();

	final List<Told<UUID>> takenOff = new ArrayList<>();

	final List<Told<Merge>> merges = new ArrayList<>();

	final List<Told<UUID>> mergesRevoked = new ArrayList<>();

	final List<Told<Assigned>> assigned = new ArrayList<>();

	final List<Told<Ruling>> rulings = new ArrayList<>();

	final List<Told<Fold>> folds = new ArrayList<>();

	final List<Told<Again>> again = new ArrayList<>();

	final List<Told<Photo>> photos = new ArrayList<>();

	final List<Told<Looked>> looked = new ArrayList<>();

	final List<Told<UUID>> photosErased = new ArrayList<>();

	record Told<T>(T what, Instant at) {
	}

	record Rules(String county, Rulebook rulebook) {
	}

	record NewTree(UUID id) {
	}

	record Named(UUID tree, String species) {
	}

	record Placed(UUID tree, String county) {
	}

	/**
	 * A visit's figures and what they came to again and again; those that it lacks are
	 * null.
	 */
	record Visit(UUID id, UUID tree, LocalDate on, Measures measures, boolean carriedOver, CarryForward carries,
			FigureMethods methods) {
	}

	/**
	 * Girth in inches, height and crown spread in feet, and the standard uncertainty of
	 * each.
	 */
	record Measures(@Nullable Double girth, @Nullable Double height, @Nullable Double crown, double uncertainty) {

		boolean full() {
			return this.girth != null && this.height != null && this.crown != null;
		}

	}

	/**
	 * A photo, of a visit or of the tree alone.
	 */
	record Photo(UUID id, UUID tree, @Nullable Visit visit) {
	}

	/**
	 * What was decided on a photo: pass, refuse, take-back or withdraw.
	 */
	record Looked(UUID photo, String word) {
	}

	record Again(UUID visit, Measures measures) {
	}

	record Required(UUID visit, int howMany) {
	}

	record Word(UUID id, UUID visit, String verdict, @Nullable UUID own) {
	}

	record Eligible(UUID tree, boolean yes) {
	}

	record Merge(UUID id, UUID tree, UUID into) {
	}

	record Assigned(UUID visit, UUID tree) {
	}

	record Ruling(UUID id, UUID tree, LocalDate from, Set<UUID> kept) {
	}

	record Fold(String species, String into) {
	}

	record Seen(UUID tree, Condition condition, LocalDate observed, @Nullable LocalDate began) {

		LocalDate holdsFrom() {
			return (this.began != null) ? this.began : this.observed;
		}

	}

}
