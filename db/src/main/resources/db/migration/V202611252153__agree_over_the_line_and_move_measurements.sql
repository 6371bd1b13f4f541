-- A tree that one coordinator says stands in another's county: the other agrees or does not.
create table relocation_proposal (
  id uuid constraint relocation_proposal_pk primary key,
  tree uuid not null constraint relocation_proposal_tree references tree,
  county text not null constraint relocation_proposal_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  from_county text not null constraint relocation_proposal_from references county,
  to_county text not null constraint relocation_proposal_to references county,
  latitude numeric(9,6) not null constraint relocation_proposal_latitude_range check (latitude between -90 and 90),
  longitude numeric(9,6) not null constraint relocation_proposal_longitude_range check (longitude between -180 and 180),
  accuracy_metres numeric(9,1) constraint relocation_proposal_accuracy_positive check (accuracy_metres > 0),
  proposed_by uuid not null constraint relocation_proposal_by references person,
  reason uuid constraint relocation_proposal_reason references text_piece,
  constraint relocation_proposal_over_a_line check (from_county <> to_county)
);
create index relocation_proposal_of on relocation_proposal (tree);
create index relocation_proposal_change on relocation_proposal (county, seq);

create table relocation_answer (
  proposal uuid constraint relocation_answer_pk primary key
    constraint relocation_answer_proposal references relocation_proposal,
  county text not null constraint relocation_answer_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  agreed boolean not null,
  by_person uuid not null constraint relocation_answer_by references person,
  reason uuid constraint relocation_answer_reason references text_piece
);
create index relocation_answer_change on relocation_answer (county, seq);

-- Moves of measurements that came without a nomination of their own.
create table measurement_move (
  id uuid constraint measurement_move_pk primary key,
  measurement uuid not null constraint measurement_move_measurement references measurement,
  county text not null constraint measurement_move_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  move text not null,
  to_status text not null constraint measurement_move_status_known check (to_status in ('filed', 'assigned', 'withdrawn')),
  verifier uuid constraint measurement_move_verifier references person,
  by_person uuid not null constraint measurement_move_by references person,
  reason uuid constraint measurement_move_reason references text_piece,
  constraint measurement_move_assigned_to_somebody check ((to_status = 'assigned') = (verifier is not null))
);
create index measurement_move_latest on measurement_move (measurement, recorded_at desc);
create index measurement_move_change on measurement_move (county, seq);

call make_append_only('relocation_proposal');
call make_append_only('relocation_answer');
call make_append_only('measurement_move');
