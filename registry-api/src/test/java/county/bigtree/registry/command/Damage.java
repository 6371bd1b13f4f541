package county.bigtree.registry.command;

/**
 * What somebody with the owner's password could do to a register, and what must be said
 * of it.
 */
enum Damage {

	EDITION_WRITTEN_OVER("update edition_file set body = body || convert_to('more', 'UTF8') where form = 'csv'",
			"its csv is not the one that was published"),

	ENTRY_REWRITTEN("update change set entry = convert_to(replace(convert_from(entry, 'UTF8'), '\"seq\":9}', "
			+ "'\"seq\":9 }'), 'UTF8') where seq = 9", "does not follow from its entry"),

	CHANGE_REMOVED("delete from change where seq = 20", "change 21 follows change 19"),

	LAST_CHANGE_REMOVED("delete from change c where seq = (select max(seq) from change where county = c.county)",
			"its head is at change"),

	FORGED_WITH_ITS_HASH("""
			update change c set entry = 'x', hash = sha256(p.hash || sha256('x')) from change p
			where p.county = c.county and p.seq = c.seq - 1
			  and c.seq = (select max(seq) from change where county = c.county)""", "its head is at change"),

	CHAIN_FORGED_TO_ITS_HEAD("""
			with forged as (update change c set hash = sha256(hash)
			  where seq = (select max(seq) from change where county = c.county) returning county, hash)
			update county_head h set chain = f.hash from forged f where f.county = h.county""",
			"was sealed with the hash"),

	SEAL_REWRITTEN("update seal set body = convert_to(replace(convert_from(body, 'UTF8'), '\"number\"', "
			+ "' \"number\"'), 'UTF8')", "does not follow from its text"),

	SEAL_FORGED_WITH_ITS_HASH(
			"""
					with forged as (select number, convert_to(regexp_replace(convert_from(body, 'UTF8'), '"hash":"........', '"hash":"00000000'),
					  'UTF8') as body from seal)
					update seal s set body = f.body, hash = sha256(sha256(f.body)) from forged f
					where f.number = s.number and s.number = 1""",
			"was sealed with the hash 00000000"),

	INSTANT_MOVED("update change set recorded_at = recorded_at - interval '1 hour' where seq = 30",
			"its entry says otherwise"),

	KIND_RENAMED("update change set kind = 'other' where seq = 30", "its entry says otherwise"),

	ACTOR_CHANGED("update change set actor = null where seq = 30", "its entry says otherwise"),

	HEAD_MOVED("update county_head set seq = seq + 1", "its head is at change"),

	DAY_CHANGED("update measurement set measured_on = measured_on + 1 where seq = (select max(seq) from measurement)",
			"tells of a measurement that does not stand so in its table"),

	READINGS_CHANGED("""
			update measurement set readings = jsonb_set(readings, '{girth}', '{"method": "tape", "girth":
			  {"value": 99, "unit": "in"}}') where seq = (select max(seq) from measurement)""", "its readings give"),

	FIGURE_CHANGED("update reduction set height_feet = height_feet + 1 where seq = (select max(seq) from reduction)",
			"its readings give"),

	REVOCATION_REMOVED("delete from revocation", "tells of a revocation that does not stand so in its table"),

	FACT_SMUGGLED_IN("""
			insert into setting_aside (measurement, county, seq, recorded_at)
			select id, county, seq, recorded_at from measurement m
			where not exists (select from setting_aside where measurement = m.id) limit 1""",
			"does not tell of this setting aside"),

	FACT_WITHOUT_A_CHANGE("""
			insert into setting_aside (measurement, county, seq, recorded_at)
			select id, county, 1000000, recorded_at from measurement m
			where not exists (select from setting_aside where measurement = m.id) limit 1""",
			"which is not in the journal"),

	RULES_CHANGED("update rulebook set body = jsonb_set(body, '{currencyYears}', '2')",
			"tells of a rulebook that does not stand so in its table"),

	WORDS_CHANGED("update text_body set body = body || '!' where id = (select id from text_body limit 1)",
			"are not those that were recorded"),

	WORDS_REMOVED("delete from text_body where id = (select id from text_body limit 1)", "are missing"),

	PHOTO_PAINTED_OVER("update photo_body set body = body || '\\x00' where width = 320",
			"has other pictures than those"),

	PHOTO_OF_ANOTHER_SIZE("""
			update photo_body b set width = 1, body = o.body, salt = o.salt from photo_body o
			where b.width = 320 and o.width = 800 and o.photo = b.photo""", "has other pictures than those"),

	PHOTO_REMOVED("delete from photo_body where photo = (select max(photo::text)::uuid from photo_body)",
			"has lost its pictures"),

	PHOTO_DIGEST_FORGED("update photo set digest = sha256('x')", "tells of a photo that does not stand so"),

	PHOTO_STILL_THERE("""
			insert into photo_erasure (photo, county, seq, recorded_at, by_person, ground)
			select id, county, seq, recorded_at, by_person, 'asked-by-author' from photo
			where id in (select photo from photo_body) limit 1""", "was erased and its pictures are still there"),

	SHEET_PASSED("update photo set shows = 'sheet'", "shows a sheet of paper and was passed"),

	SCORE_CHANGED("update score set points = points + 0.01 where id = (select max(id) from score)", "its facts give"),

	SCORE_REMOVED("delete from score where id = (select min(id) from score)", "its facts give"),

	SCORE_WITHDRAWN("""
			update score set withdrawn_at = recorded_at + interval '1 day', withdrawn = 'mistake'
			where id = (select max(id) from score where withdrawn_at is null)""", "its facts give"),

	SCORE_CLOSED_LATE("""
			update score set closed_at = closed_at + interval '1 day'
			where id = (select max(id) from score where closed_at is not null)""", "its facts give"),

	SCORE_IN_ANOTHER_BOOK("""
			update score set species = (select min(species) from book b where b.species <> score.species)
			where id = (select max(id) from score)""", "its facts give"),

	TITLE_REMOVED("delete from title_span where id = (select max(id) from title_span)", "its titles are"),

	TITLE_GIVEN("""
			insert into title_span (county, species, tree, title, from_at, points, measured_on, began)
			select county, species, tree, 'co-champion', recorded_at, points, measured_on, 'signed-off' from score s
			where withdrawn_at is null and ends_on is null and not exists (select from title_span where tree = s.tree)
			limit 1""", "its titles are"),

	TITLE_BEGUN_EARLY("""
			update title_span set from_at = from_at - interval '1 hour'
			where id = (select max(id) from title_span where to_at is null)""", "its titles are"),

	TITLE_ENDED_EARLY("""
			update title_span set to_at = from_at + interval '1 microsecond', ended = 'overtaken'
			where id = (select id from title_span where to_at is null order by from_at desc, id desc limit 1)""",
			"titles changed later"),

	OLD_TITLE_ENDED_EARLY("""
			update title_span set to_at = from_at + interval '1 microsecond'
			where id = (select min(id) from title_span where to_at > from_at + interval '1 microsecond')""",
			"its titles are"),

	TITLE_RENAMED("""
			update title_span set title = case title when 'champion' then 'co-champion' else 'champion' end
			where id = (select min(id) from title_span)""", "its titles are"),

	TITLE_WITH_OTHER_POINTS("update title_span set points = points + 1 where id = (select min(id) from title_span)",
			"with a score it did not have"),

	TREES_MISCOUNTED("update book set trees = trees + 1", "trees and ranks"),

	BOOK_REMOVED("delete from book", "has scores or titles but no book"),

	EVENT_FORGOTTEN("update book set next_event_at = null where next_event_at is not null",
			"time will next change it at"),

	KEPT_FROM_CONTENDING("update score set may_hold = false where withdrawn_at is null and ends_on is null",
			"recorded is otherwise"),

	TURNING_DAY_MOVED("update score set turns_on = turns_on + 1 where turns_on is not null", "recorded is otherwise"),

	PAST_ANSWER_CHANGED("update score set points = points + 0.01", "was answered otherwise"),

	WITNESS_FORGED("update witness set digest = sha256('x') where species = (select min(species) from witness)",
			"was answered otherwise"),

	STATUS_SET("update nomination set status = 'declined' where status = 'accepted'", "but its last move made it"),

	VERIFIER_SET("update nomination set verifier = nominator", "with another verifier"),

	REVISION_SET("update nomination set revision = revision + 1", "at revision"),

	OWN_TREE_SIGNED("""
			update sign_off s set given_by = n.nominator from measurement m join nomination n on n.tree = m.tree
			where m.id = s.measurement""", "on a tree that its giver nominated"),

	SIGNED_BY_NOBODY_OF_THE_COUNTY("""
			update sign_off s set given_by = (select id from person p where not exists (select from role_assignment
			  where person = p.id and role in ('verifier', 'coordinator')) limit 1)""",
			"was given by nobody who verified there then"),

	SIGNED_AFTER_A_GUESTS_VISIT(
			"""
					with one as (select s.*, m.tree, (select id from person p where not exists (select from role_assignment
					    where person = p.id and role in ('verifier', 'coordinator')) limit 1) as guest
					  from sign_off s join measurement m on m.id = s.measurement order by s.id limit 1),
					planned as (insert into visit (id, tree, county, seq, recorded_at, purpose, verifier, guest, planned_by)
					  select gen_random_uuid(), tree, county, seq, recorded_at - interval '2 hours', 'sign-off', guest, true, given_by
					  from one returning id),
					told as (insert into visit_outcome (visit, county, seq, recorded_at, outcome, visited_on, by_person)
					  select p.id, o.county, o.seq, o.recorded_at - interval '1 hour', 'seen', current_date, o.guest
					  from planned p, one o)
					update sign_off s set given_by = o.guest from one o where o.id = s.id""",
			"was given by nobody who verified there then"),

	AGREEMENT_CHANGED("""
			update sign_off set agreement = jsonb_set(agreement, '{0,filed}', '12.5') where agreement is not null""",
			"was judged by other figures than were on record"),

	AGREEMENT_SOFTENED("""
			update sign_off set agreement = jsonb_set(agreement, '{0,verdict}', '"agrees"')
			where agreement -> 0 ->> 'verdict' <> 'agrees'""", "its numbers say otherwise"),

	CORRECTION_MADE_A_CONFIRMATION("""
			update sign_off set verdict = 'confirmed' where verdict = 'corrected' and exists (select from
			  jsonb_array_elements(agreement) f where abs((f ->> 'filed')::numeric - (f ->> 'checked')::numeric)
			    > (f ->> 'tolerance')::numeric + 1)""", "beyond its tolerance"),

	AGREEMENT_REMOVED("update sign_off set agreement = null where agreement is not null",
			"tells of a sign_off that does not stand so in its table"),

	READINGS_DEMANDED("update rulebook set body = jsonb_set(body, '{checkReadingsRequired}', 'true')",
			"brought no readings"),

	PHOTOS_DEMANDED("update rulebook set body = jsonb_set(body, '{photosRequired}', '10')",
			"passed photos of 10 asked for"),

	SPECIES_LISTED("update rulebook set body = jsonb_set(body, '{eligibleSpecies}', '[\"acer-rubrum\"]')",
			"its titles are"),

	ASSENT_REMOVED("delete from sign_off_assent", "tells of a sign_off_assent that does not stand so in its table"),

	ASSENT_BY_NOBODY_OF_THE_COUNTY("""
			update sign_off_assent a set by_person = (select id from person p where not exists (
			  select from role_assignment where person = p.id and role = 'coordinator') order by id limit 1)""",
			"was assented to by nobody who coordinated there then"),

	ASSENT_BY_WHO_NOMINATED(
			"""
					update sign_off_assent a set by_person = n.nominator from sign_off s join measurement m on m.id = s.measurement
					join nomination n on n.tree = m.tree and n.filed_for is null where s.id = a.sign_off""",
			"was assented to by who nominated its tree"),

	MADE_TO_WAIT_WITHOUT_A_RULE("update rulebook set body = body - 'titleNeedsCoordinator'",
			"waits for a coordinator, which no rule asked for then"),

	OWNER_CHANGED("update tree_owner set name = contact where name is not null and contact is not null",
			"tells of a tree_owner that does not stand so in its table"),

	OWNER_BROUGHT_BACK("delete from owner_end", "tells of a owner_end that does not stand so in its table"),

	CONSENT_TURNED("update consent set given = not given where until_on is null",
			"tells of a consent that does not stand so in its table"),

	LETTER_BACKDATED("update letter set answer_by = answer_by + 100",
			"tells of a letter that does not stand so in its table"),

	LETTER_OUTCOME_REMOVED("delete from letter_outcome",
			"tells of a letter_outcome that does not stand so in its table"),

	REQUIREMENT_REMOVED("delete from sign_off_requirement", "before how many are needed was judged");

	private final String sql;

	private final String said;

	Damage(String sql, String said) {
		this.sql = sql;
		this.said = said;
	}

	String sql() {
		return this.sql;
	}

	/**
	 * Words that some finding must contain.
	 */
	String said() {
		return this.said;
	}

}
