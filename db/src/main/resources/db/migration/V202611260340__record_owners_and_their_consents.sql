-- Who owns a tree, and what they consent to. Names, contacts and words are erasable texts; a person of the register may be an
-- owner. An owner who leaves keeps the row.
create table tree_owner (
  id uuid constraint tree_owner_pk primary key,
  tree uuid not null constraint tree_owner_tree references tree,
  county text not null constraint tree_owner_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  person uuid constraint tree_owner_person references person,
  name uuid constraint tree_owner_name references text_piece,
  contact uuid constraint tree_owner_contact references text_piece,
  split_from uuid constraint tree_owner_split_from references tree_owner
);
create index tree_owner_of_tree on tree_owner (tree);
create index tree_owner_change on tree_owner (county, seq);
create index tree_owner_of_person on tree_owner (person) where person is not null;

create table owner_end (
  owner uuid constraint owner_end_pk primary key constraint owner_end_owner references tree_owner,
  county text not null constraint owner_end_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint owner_end_by references person,
  reason uuid constraint owner_end_reason references text_piece
);
create index owner_end_change on owner_end (county, seq);

-- The last said for a purpose holds, from its day through its last day.
create table consent (
  id uuid constraint consent_pk primary key,
  owner uuid not null constraint consent_owner references tree_owner,
  county text not null constraint consent_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  purpose text not null constraint consent_purpose_known check (purpose in ('visit', 'listing', 'place', 'photos')),
  given boolean not null,
  how text not null constraint consent_how_known check (how in ('form', 'letter', 'e-mail', 'telephone', 'in-person')),
  given_on date not null,
  until_on date,
  by_person uuid constraint consent_by references person,
  remarks uuid constraint consent_remarks references text_piece,
  constraint consent_days_in_order check (given_on <= until_on),
  constraint consent_refusal_has_no_end check (given or until_on is null)
);
create index consent_of_owner on consent (owner, purpose, recorded_at desc);
create index consent_change on consent (county, seq);

-- How many owners a tree has, with all that it is merged with, and how many of them consent to what on the day of the instant.
create function owners_consent(asked uuid, at timestamptz)
  returns table (owners int, to_visit int, to_listing int, to_place int, to_photos int) language sql stable as $$
  select count(*)::int, (count(*) filter (where s.visit))::int, (count(*) filter (where s.listing))::int,
    (count(*) filter (where s.place))::int, (count(*) filter (where s.photos))::int
  from tree_owner o join county c on c.key = o.county
  cross join lateral (
    select bool_or(l.holds) filter (where l.purpose = 'visit') as visit,
      bool_or(l.holds) filter (where l.purpose = 'listing') as listing,
      bool_or(l.holds) filter (where l.purpose = 'place') as place,
      bool_or(l.holds) filter (where l.purpose = 'photos') as photos
    from (select distinct on (purpose) purpose, given and given_on <= (at at time zone c.time_zone)::date
        and (until_on is null or until_on >= (at at time zone c.time_zone)::date) as holds
      from consent where owner = o.id order by purpose, recorded_at desc, id desc) l) s
  where o.tree in (select tree_family(kept_tree(asked), 'infinity')) and not exists (select from owner_end where owner = o.id)
$$;

-- Who found a tree for which somebody else filed: a person of the register, and the name that they want to be credited by.
alter table nomination
  add column found_by uuid constraint nomination_found_by references person,
  add column credit uuid constraint nomination_credit references text_piece;

call make_append_only('tree_owner');
call make_append_only('owner_end');
call make_append_only('consent');
