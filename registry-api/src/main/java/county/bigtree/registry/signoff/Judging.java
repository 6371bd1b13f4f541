package county.bigtree.registry.signoff;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.review.Interested;
import county.bigtree.domain.review.PersonId;
import county.bigtree.domain.review.SignOffRules;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.nomination.MoveNomination;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.standing.TitlesAtStake;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What is judged of a sign-off when it is given, and then kept as a fact: how many the
 * measurement needs, and whether this one waits for a coordinator. Also who is too near
 * to the measurement to have a say.
 */
@Component
class Judging {

	private static final String TOO_FEW_PHOTOS = "By this sign-off the tree would hold a title, and for that the county asks for "
			+ "%d photo%s of it that a verifier or coordinator has passed; %d are. Pass photos that wait, or send some, and sign off then.";

	private final JdbcClient jdbc;

	private final Facts facts;

	private final RulesReader rules;

	private final TitlesAtStake atStake;

	Judging(JdbcClient jdbc, Facts facts, RulesReader rules, TitlesAtStake atStake) {
		this.jdbc = jdbc;
		this.facts = facts;
		this.rules = rules;
		this.atStake = atStake;
	}

	/**
	 * The rules by which a measurement is judged: those of its measuring day.
	 */
	Rulebook rulesOf(Change change, String county, LocalDate measuredOn) {
		return this.rules.get(change, county).on(measuredOn, change.recordedAt());
	}

	/**
	 * Whether a measurement was filed too long after its day, by the rules in force then.
	 */
	boolean late(Change change, String county, LocalDate measuredOn, Instant filedAt) {
		CountyRules of = this.rules.get(change, county);
		return of.at(filedAt).filedLate(measuredOn, of.day(filedAt));
	}

	/**
	 * Refuses whoever measured, found or owns.
	 * @param earlier who has signed off already: nobody does twice
	 */
	static void requireIndependent(Actor actor, Interested interested, Set<PersonId> earlier) {
		SignOffRules.maySign(new PersonId(actor.id()), interested, earlier).ifPresent((refusal) -> {
			throw MoveNomination.refused(refusal);
		});
	}

	/**
	 * How many sign-offs the measurement needs: as judged at its first, which is now if
	 * there was none.
	 */
	int required(Change change, ReadMeasurements.Measurement measurement, Rulebook rulebook) {
		Optional<Integer> judged = this.jdbc.sql("select required from sign_off_requirement where measurement = ?")
			.param(measurement.id())
			.query(Integer.class)
			.optional();
		return judged.orElseGet(() -> {
			int needed = this.atStake.signOffsNeeded(change, measurement.tree(), measurement.id(), rulebook);
			this.facts.append(change, FactTable.SIGN_OFF_REQUIREMENT, "measurement", measurement.id(), "required",
					needed);
			return needed;
		});
	}

	/**
	 * Refuses a sign-off, once it is recorded, by which a title would rest on figures of
	 * a tree with fewer passed photos than the rules ask for.
	 * @param own the measurement that the verifier brought, or null
	 * @param agrees whether the sign-off says that the filed figures hold
	 */
	void requirePhotos(Change change, ReadMeasurements.Measurement filed, @Nullable UUID own, boolean agrees,
			Rulebook rulebook) {
		UUID counting = (own != null && isFull(own)) ? own : (agrees ? filed.id() : null);
		int needed = (counting != null) ? this.atStake.photosNeeded(change, filed.tree(), counting, rulebook) : 0;
		int passed = (needed > 0) ? photosPassed(filed.tree(), change.recordedAt()) : 0;
		if (passed < needed) {
			throw Problem.of(ProblemType.REFUSED, TOO_FEW_PHOTOS.formatted(needed, (needed == 1) ? "" : "s", passed))
				.with("photosRequired", needed)
				.with("photosPassed", passed);
		}
	}

	private boolean isFull(UUID brought) {
		return this.jdbc.sql("select brought_full(?)").param(brought).query(Boolean.class).single();
	}

	private int photosPassed(UUID tree, Instant at) {
		return this.jdbc.sql("select photos_passed(kept_tree(?), ?)")
			.params(tree, SqlTime.of(at))
			.query(Integer.class)
			.single();
	}

	/**
	 * Makes a sign-off wait where it would change who holds a title and the rules want a
	 * coordinator's yes to that. One who is a coordinator says it by signing off.
	 * @param counts whether the tree is accepted by it
	 * @return whether it waits
	 */
	boolean defer(Change change, UUID signOff, UUID tree, boolean counts, @Nullable Actor coordinator) {
		if (!this.atStake.needCoordinator(change, tree, counts)) {
			return false;
		}
		this.facts.append(change, FactTable.SIGN_OFF_DEFERRAL, "sign_off", signOff);
		if (coordinator != null) {
			assent(change, signOff, coordinator, null);
		}
		return coordinator == null;
	}

	void assent(Change change, UUID signOff, Actor coordinator, @Nullable UUID reason) {
		this.facts.append(change, FactTable.SIGN_OFF_ASSENT, "sign_off", signOff, "by_person", coordinator.id(),
				"reason", reason);
	}

	/**
	 * Whether a measurement counts by all that is recorded of it.
	 */
	boolean counts(UUID measurement) {
		return this.jdbc.sql("select measurement_counts(?)").param(measurement).query(Boolean.class).single();
	}

}
