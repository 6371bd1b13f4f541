-- Answers that were given, as digests: the standing of a day as known at an instant never changes, and verify asks again.
create table witness (
  county text not null constraint witness_county references county,
  species text not null constraint witness_species references species,
  as_of date not null,
  known_at timestamptz not null,
  kept_on date not null,
  trees int not null constraint witness_trees_sane check (trees >= 0),
  digest bytea not null constraint witness_digest_length check (length(digest) = 32),
  constraint witness_pk primary key (county, species, as_of, known_at)
);
comment on column witness.kept_on is 'The day, in UTC, of the daily run that asked';
comment on column witness.digest is 'SHA-256 of one line per tree in ranking order: rank, tree, points and title or -, parted by tabs';
create index witness_kept on witness (county, kept_on);
call make_append_only('witness');
