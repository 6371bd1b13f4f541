-- What people are told: one row a recipient, put in with the facts that it tells of, and sent by e-mail afterwards. It holds no
-- words: those are made when it is sent or shown, of what is known then.
create table notice (
  id uuid constraint notice_pk primary key,
  kind text not null constraint notice_kind_known check (kind in ('filing-received', 'filing-returned', 'filing-decided',
    'title-won', 'title-lost', 'titles-turned', 'work-assigned', 'remeasurement-due', 'weekly-digest')),
  subject text not null,
  recipient uuid not null constraint notice_recipient references person,
  county text not null constraint notice_county references county,
  tree uuid constraint notice_tree references tree,
  page text not null constraint notice_page_plain check (page ~ '^(/[a-z0-9-]+)+$'),
  detail text not null constraint notice_detail_plain check (detail ~ '^[a-z0-9-]+$'),
  queued_at timestamptz not null,
  mail text not null constraint notice_mail_known check (mail in ('waiting', 'sent', 'none', 'failed')),
  next_try_at timestamptz not null,
  tries int not null default 0,
  last_error text,
  sent_at timestamptz,
  constraint notice_once unique (kind, subject, recipient),
  constraint notice_sent_is_whole check ((mail = 'sent') = (sent_at is not null))
);
comment on column notice.subject is 'What it is about: the id of a filing, move, title span or visit, or a county and a day';
comment on column notice.page is 'The path of the page on which it stands in full';
comment on column notice.mail is 'none: it stands on the pages only';
comment on column notice.last_error is 'What kind of failure, never what the mail server said: that names addresses';
create index notice_waiting on notice (next_try_at) where mail = 'waiting';
create index notice_of on notice (recipient, queued_at desc, id desc);
create index notice_sent on notice (recipient, sent_at) where mail = 'sent';

-- The kinds that somebody doesn't want by e-mail.
create table notice_refusal (
  person uuid not null constraint notice_refusal_person references person,
  kind text not null,
  since timestamptz not null,
  constraint notice_refusal_pk primary key (person, kind)
);

-- By which links in mails are signed; made once, at the first need.
create table notice_secret (
  one boolean not null default true constraint notice_secret_pk primary key constraint notice_secret_one check (one),
  secret bytea not null constraint notice_secret_length check (length(secret) = 32)
);

-- Which titles turned at an instant.
create index title_span_from on title_span (county, from_at);
create index title_span_to on title_span (county, to_at) where to_at is not null;

call make_changeable('notice', 'update (mail, next_try_at, tries, last_error, sent_at)', 'delete');
call make_changeable('notice_refusal', 'delete');
call make_append_only('notice_secret');
