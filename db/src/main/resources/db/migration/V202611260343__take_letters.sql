-- What anybody writes to a county, and what became of it. All words are erasable texts.
create table letter (
  id uuid constraint letter_pk primary key,
  county text not null constraint letter_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  about text not null constraint letter_about_known
    check (about in ('tip', 'condition', 'doubt', 'owner', 'privacy', 'records', 'accessibility', 'other')),
  tree uuid constraint letter_tree references tree,
  words uuid not null constraint letter_words references text_piece,
  contact uuid constraint letter_contact references text_piece,
  written_by uuid constraint letter_written_by references person,
  answer_by date not null
);
create index letter_of_county on letter (county, id);
create index letter_change on letter (county, seq);

create table letter_outcome (
  letter uuid constraint letter_outcome_pk primary key constraint letter_outcome_letter references letter,
  county text not null constraint letter_outcome_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  became text not null constraint letter_outcome_became_known
    check (became in ('nothing', 'answer', 'nomination', 'report', 'visit', 'correction')),
  nomination uuid constraint letter_outcome_nomination references nomination,
  condition_report uuid constraint letter_outcome_condition_report references condition_report,
  visit uuid constraint letter_outcome_visit references visit,
  corrected_tree uuid constraint letter_outcome_corrected_tree references tree,
  answer uuid constraint letter_outcome_answer references text_piece,
  by_person uuid not null constraint letter_outcome_by references person,
  constraint letter_outcome_names_what_it_became check (
    (became = 'nomination') = (nomination is not null) and (became = 'report') = (condition_report is not null)
    and (became = 'visit') = (visit is not null) and (became = 'correction') = (corrected_tree is not null))
);
create index letter_outcome_change on letter_outcome (county, seq);

call make_append_only('letter');
call make_append_only('letter_outcome');
