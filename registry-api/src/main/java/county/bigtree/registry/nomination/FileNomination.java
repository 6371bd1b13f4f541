package county.bigtree.registry.nomination;

import java.util.List;
import java.util.UUID;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.review.NominationStatus;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.measurement.Basis;
import county.bigtree.registry.measurement.RecordMeasurement;
import county.bigtree.registry.owner.ConsentBody;
import county.bigtree.registry.owner.OwnerBody;
import county.bigtree.registry.owner.RecordOwner;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.RegisterTree;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Files a nomination: a tree, what it is, where it stands, and its first measurement.
 */
@Service
public class FileNomination {

	private final Journal journal;

	private final RegisterTree register;

	private final RecordMeasurement record;

	private final NominationBook book;

	private final Words words;

	FileNomination(Journal journal, RegisterTree register, RecordMeasurement record, NominationBook book, Words words) {
		this.journal = journal;
		this.register = register;
		this.record = record;
		this.book = book;
		this.words = words;
	}

	/**
	 * Files it and answers its id.
	 */
	@Transactional
	public UUID file(Actor actor, String county, NominationBody body) {
		Change change = this.journal.open(county);
		UUID tree = this.register.register(change);
		this.register.identify(change, tree, body.species(), "leaf", null);
		this.register.locate(change, tree, county, body.location(), shown(body), body.locality(), null);
		UUID measurement = this.record.record(change, tree, body.measurement().confirming(body.confirmedChecks()),
				actor.id(), Basis.FILED, "#/measurement");
		this.words.owner(change, actor, body.owner(), tree);
		UUID nomination = this.words.nomination(change, actor, body, tree, measurement);
		this.book.append(change, nomination, "submit", null, NominationStatus.SUBMITTED, actor.id(), null, null);
		this.journal.close(change, "nominated", actor.id());
		return nomination;
	}

	/**
	 * An exact place is shown only where the owner consents; nearby where nothing is
	 * said.
	 */
	private static Disclosure shown(NominationBody body) {
		String wish = (body.visibility() != null) ? body.visibility() : "nearby";
		Disclosure wished = Disclosure.find(wish).orElse(Disclosure.COUNTY);
		NominationBody.OwnerSaid owner = body.owner();
		boolean consented = (owner != null && owner.says()) ? owner.publishes() : "public".equals(body.access());
		return consented ? wished : wished.orLess(Disclosure.NEARBY);
	}

	/**
	 * Appends the nomination itself, people's words apart.
	 */
	@org.springframework.stereotype.Component
	static class Words {

		private final Facts facts;

		private final Texts texts;

		private final JsonMapper json;

		private final RecordOwner owners;

		Words(Facts facts, Texts texts, JsonMapper json, RecordOwner owners) {
			this.facts = facts;
			this.texts = texts;
			this.json = json;
			this.owners = owners;
		}

		/**
		 * Records the owner, and as consents what they said to the filer.
		 */
		void owner(Change change, Actor actor, NominationBody.@Nullable OwnerSaid said, UUID tree) {
			if (said == null || !said.says()) {
				return;
			}
			UUID owner = this.owners.owner(change, tree, new OwnerBody(said.name(), said.contact(), said.person()),
					"#/owner");
			consent(change, owner, List.of("visit"), said.consentToVisit(), actor);
			consent(change, owner, List.of("listing", "place"), said.consentToPublish(), actor);
		}

		private void consent(Change change, UUID owner, List<String> purposes, @Nullable Boolean given, Actor actor) {
			if (given != null) {
				this.owners.said(change, owner, new ConsentBody(purposes, given, "form", null, null, null), actor.id());
			}
		}

		UUID nomination(Change change, Actor actor, NominationBody body, UUID tree, UUID measurement) {
			UUID id = Uuid7.next();
			NominationBody.FiledFor filedFor = body.filedFor();
			if (filedFor != null && !filedFor.names()) {
				throw Problem.invalid("#/filedFor/name", "missing", "give a name or a person");
			}
			UUID foundBy = (filedFor != null) ? filedFor.person() : null;
			this.owners.requirePerson(foundBy, "#/filedFor");
			this.facts.append(change, FactTable.NOMINATION, "id", id, "tree", tree, "measurement", measurement,
					"nominator", actor.id(), "access", (body.access() != null) ? body.access() : "by-permission",
					"completed_at", body.completedAt(), "filed_for", keep(change, filedFor), "found_by", foundBy,
					"credit", this.texts.keep(change, (filedFor != null) ? filedFor.publicCredit() : null), "status",
					NominationStatus.SUBMITTED.code(), "revision", 1L);
			return id;
		}

		private @Nullable UUID keep(Change change, @Nullable Object value) {
			return (value != null) ? this.texts.keep(change, this.json.writeValueAsString(value)) : null;
		}

	}

}
