alter table role_assignment add column ended_by uuid constraint role_assignment_ended_by references person;
comment on column role_assignment.ended_by is 'Who ended it; null where its time was set when it was given, or it holds on';
alter table role_assignment drop constraint role_assignment_span;
-- A role taken back before it began has no time at all.
alter table role_assignment add constraint role_assignment_span check (from_at <= until_at);
drop index role_assignment_county_now;
create index role_assignment_county on role_assignment (county, person);
call make_changeable('role_assignment', 'update (ended_by)');

alter table person add column legal_name text
	constraint person_legal_name check (legal_name = btrim(legal_name) and length(legal_name) between 1 and 200);
comment on column person.legal_name is 'Shown to the person and the administrator of the database alone';
alter table person add column erased_at timestamptz;
comment on column person.erased_at is 'When name, address and words were erased; the row stays, for the facts name its id';
call make_changeable('person', 'update (legal_name, erased_at)');
call make_changeable('invitation', 'update (email, credit_name)');
call make_changeable('access_token', 'delete');

-- Nothing came of a visit whose verifier no longer verifies.
alter table visit_outcome drop constraint visit_outcome_known;
alter table visit_outcome add constraint visit_outcome_known
	check (outcome in ('measured', 'seen', 'not-found', 'refused', 'no-answer', 'unsafe', 'not-reached', 'handed-back'));

-- Words that were erased: the piece keeps its digest, and this says when, by whom and why.
create table text_erasure (
	text uuid constraint text_erasure_pk primary key constraint text_erasure_text references text_piece,
	county text not null constraint text_erasure_county references county,
	seq bigint not null,
	recorded_at timestamptz not null,
	by_person uuid not null constraint text_erasure_by references person,
	ground text not null constraint text_erasure_ground_known check (ground in ('asked-by-author', 'by-administrator'))
);
create index text_erasure_change on text_erasure (county, seq);
create index change_of_actor on change (actor, county, seq);
call make_append_only('text_erasure');
