-- A picture may stand in an object store beside the database: its row then names the object and holds the SHA-256 of salt and picture.
alter table photo_body alter column body drop not null;
alter table photo_body add column object text constraint photo_body_object_once unique;
alter table photo_body add column digest bytea constraint photo_body_digest_length check (length(digest) = 32);
alter table photo_body add constraint photo_body_is_somewhere check ((body is null) = (object is not null) and (object is null) = (digest is null));

-- Objects that no picture names, to be deleted from the store when they are due: put for a photo that is about to be recorded, or left
-- by one that was erased or moved.
create table unnamed_object (
  object text constraint unnamed_object_pk primary key,
  why text not null constraint unnamed_object_why_known check (why in ('put', 'erased', 'moved')),
  due_at timestamptz not null,
  since timestamptz not null,
  tries int not null default 0
);
comment on column unnamed_object.due_at is 'Of one that was put: when it is too late to record its photo';
create index unnamed_object_due on unnamed_object (due_at);

call make_changeable('photo_body', 'update (body, object, digest)');
call make_changeable('unnamed_object', 'update (due_at, tries)', 'delete');
