package county.bigtree.registry.county;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Locale;
import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.rules.RulebookJson;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Founds a county with its first rulebook.
 */
@Service
public class FoundCounty {

	private final Journal journal;

	private final Facts facts;

	private final JsonMapper json;

	private final ListedSpecies listed;

	FoundCounty(Journal journal, Facts facts, JsonMapper json, ListedSpecies listed) {
		this.journal = journal;
		this.facts = facts;
		this.json = json;
		this.listed = listed;
	}

	/**
	 * Founds the county.
	 * @throws Problem where the time zone is not known or the key or tag prefix is taken
	 */
	@Transactional
	public void found(Actor actor, CountyBody body) {
		ZoneId zone = zone(body.timeZone());
		Rulebook rulebook = first(body.rulebook());
		this.listed.require(rulebook, "#/rulebook");
		JsonNode boundary = body.boundary();
		Change change = this.journal.openFirst(body.key(), zone);
		try {
			this.facts.append(change, FactTable.COUNTY, "name", body.name(), "state", body.state(), "time_zone",
					zone.getId(), "tag_prefix", prefix(body), "boundary",
					(boundary != null) ? this.json.writeValueAsString(boundary) : null, "practice",
					Boolean.TRUE.equals(body.practice()));
		}
		catch (DuplicateKeyException ex) {
			throw Problem.of(ProblemType.CONFLICT, "A county with this key or tag prefix is in the register already.");
		}
		appendRulebook(change, rulebook, null);
		this.journal.close(change, "county-founded", actor.id());
	}

	void appendRulebook(Change change, Rulebook rulebook, @Nullable UUID reason) {
		this.facts.append(change, FactTable.RULEBOOK, "id", Uuid7.next(), "effective_on", rulebook.effectiveOn(),
				"body", this.json.writeValueAsString(RulebookJson.from(rulebook)), "reason", reason);
	}

	private static Rulebook first(@Nullable RulebookJson body) {
		return (body != null) ? AddRulebook.valid(body.from(Rulebook.BEGINNING), "#/rulebook")
				: Rulebook.defaults(Rulebook.BEGINNING);
	}

	private static ZoneId zone(String timeZone) {
		try {
			return ZoneId.of(timeZone);
		}
		catch (DateTimeException ex) {
			throw Problem.invalid("#/timeZone", "unknown", "must be an IANA time zone such as America/Chicago");
		}
	}

	private static String prefix(CountyBody body) {
		String given = body.tagPrefix();
		if (given != null) {
			return given;
		}
		String letters = body.key().replaceAll("[^a-z]", "").toUpperCase(Locale.ROOT);
		return (letters + "XX").substring(0, Math.min(4, Math.max(2, letters.length())));
	}

}
