-- Editions: a county's published lists. An edition is announced with its days, published once, and never worked out again: the bytes
-- that were published are kept beside the digests that the publication records. What turns out wrong later is a dated erratum.
create table edition (
  id uuid constraint edition_pk primary key,
  county text not null constraint edition_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  name text not null constraint edition_name_length check (length(name) between 1 and 60),
  filings_by date not null,
  grace_days int not null constraint edition_grace_range check (grace_days between 0 and 60),
  closes_on date not null,
  time_zone text not null,
  announced_by uuid not null constraint edition_announced_by references person,
  constraint edition_of_county unique (county, name),
  constraint edition_closes_after_grace check (closes_on >= filings_by + grace_days)
);
create index edition_change on edition (county, seq);

create table edition_publication (
  edition uuid constraint edition_publication_pk primary key constraint edition_publication_edition references edition,
  county text not null constraint edition_publication_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  known_at timestamptz not null,
  head_seq bigint not null,
  head_chain bytea not null,
  list_sha256 bytea not null,
  csv_sha256 bytea not null,
  pdf_sha256 bytea,
  published_by uuid not null constraint edition_publication_by references person
);
create index edition_publication_change on edition_publication (county, seq);

create table edition_erratum (
  id uuid constraint edition_erratum_pk primary key,
  edition uuid not null constraint edition_erratum_edition references edition_publication,
  county text not null constraint edition_erratum_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  tree uuid constraint edition_erratum_tree references tree,
  words uuid not null constraint edition_erratum_words references text_piece,
  by_person uuid not null constraint edition_erratum_by references person
);
create index edition_erratum_change on edition_erratum (county, seq);
create index edition_erratum_of on edition_erratum (edition, recorded_at);

create table edition_file (
  edition uuid not null constraint edition_file_edition references edition_publication,
  form text not null constraint edition_file_form_known check (form in ('list', 'csv', 'pdf')),
  body bytea not null,
  constraint edition_file_pk primary key (edition, form)
);

call make_append_only('edition');
call make_append_only('edition_publication');
call make_append_only('edition_erratum');
call make_append_only('edition_file');
