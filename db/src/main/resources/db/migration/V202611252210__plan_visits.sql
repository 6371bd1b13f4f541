-- Work for a verifier at a tree, and what came of it. The notes are for those who go there, and never public.
create table visit (
  id uuid constraint visit_pk primary key,
  tree uuid not null constraint visit_tree references tree,
  county text not null constraint visit_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  purpose text not null constraint visit_purpose_known check (purpose in ('sign-off', 'remeasure', 'condition', 'doubt')),
  verifier uuid not null constraint visit_verifier references person,
  companion uuid constraint visit_companion references text_piece,
  by_when date,
  arranged_on date,
  arranged_at timestamptz,
  planned_by uuid not null constraint visit_planned_by references person,
  notes uuid constraint visit_notes references text_piece,
  constraint visit_arranged_for_one check (arranged_on is null or arranged_at is null)
);
create index visit_of_tree on visit (tree);
create index visit_of_verifier on visit (verifier, id);
create index visit_change on visit (county, seq);

create table visit_outcome (
  visit uuid constraint visit_outcome_pk primary key constraint visit_outcome_visit references visit,
  county text not null constraint visit_outcome_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  outcome text not null constraint visit_outcome_known
    check (outcome in ('measured', 'seen', 'not-found', 'refused', 'no-answer', 'unsafe', 'not-reached')),
  visited_on date not null,
  remarks uuid constraint visit_outcome_remarks references text_piece,
  measurement uuid constraint visit_outcome_measurement references measurement,
  condition_report uuid constraint visit_outcome_condition_report references condition_report,
  by_person uuid not null constraint visit_outcome_by references person,
  constraint visit_outcome_measured check (measurement is null or outcome = 'measured')
);
create index visit_outcome_change on visit_outcome (county, seq);

call make_append_only('visit');
call make_append_only('visit_outcome');
