-- Sessions of people who signed in with a cookie, in the form that Spring Session JDBC 4.0 wants (its schema-postgresql.sql).
create table spring_session (
	primary_id char(36) not null,
	session_id char(36) not null,
	creation_time bigint not null,
	last_access_time bigint not null,
	max_inactive_interval int not null,
	expiry_time bigint not null,
	principal_name varchar(100),
	constraint spring_session_pk primary key (primary_id));
comment on column spring_session.principal_name is 'The id of the person; null before anyone has signed in';
create unique index spring_session_ix1 on spring_session (session_id);
create index spring_session_ix2 on spring_session (expiry_time);
create index spring_session_ix3 on spring_session (principal_name);
call make_changeable('spring_session', 'delete',
	'update (session_id, last_access_time, max_inactive_interval, expiry_time, principal_name)');

create table spring_session_attributes (
	session_primary_id char(36) not null,
	attribute_name varchar(200) not null,
	attribute_bytes bytea not null,
	constraint spring_session_attributes_pk primary key (session_primary_id, attribute_name),
	constraint spring_session_attributes_fk foreign key (session_primary_id) references spring_session (primary_id) on delete cascade);
call make_changeable('spring_session_attributes', 'delete', 'update (attribute_bytes)');

-- What happened at the door. It also counts failures, so that all nodes hold back the same people. Kept for half a year.
create table sign_in_event (
	id uuid not null,
	happened_at timestamptz not null,
	event text not null,
	person uuid,
	account bytea,
	client_network text not null,
	constraint sign_in_event_pk primary key (id),
	constraint sign_in_event_person foreign key (person) references person,
	constraint sign_in_event_known check (event in ('signed-in', 'password-given', 'failed', 'held-back', 'signed-out',
		'signed-out-everywhere', 'password-changed', 'reset-made', 'password-reset')),
	constraint sign_in_event_account_length check (length(account) = 32));
comment on column sign_in_event.person is 'Null where it failed: whose address it was, if anybody''s, is told by account';
comment on column sign_in_event.account is 'SHA-256 of the e-mail address that was given, in lower case: what people mistype is not kept';
comment on column sign_in_event.client_network is 'IPv4 address, or the first 64 bits of an IPv6 address';
create index sign_in_event_account_at on sign_in_event (account, happened_at desc);
create index sign_in_event_network_at on sign_in_event (client_network, happened_at desc) where event = 'failed';
create index sign_in_event_person_at on sign_in_event (person, id desc);
create index sign_in_event_at on sign_in_event (happened_at);
call make_changeable('sign_in_event', 'delete', 'update (event, person)');

create table password_reset (
	id uuid not null,
	person uuid not null,
	hash bytea not null,
	created_at timestamptz not null,
	expires_at timestamptz not null,
	made_by uuid,
	ended_at timestamptz,
	constraint password_reset_pk primary key (id),
	constraint password_reset_person foreign key (person) references person,
	constraint password_reset_made_by foreign key (made_by) references person,
	constraint password_reset_hash unique (hash),
	constraint password_reset_hash_length check (length(hash) = 32),
	constraint password_reset_span check (created_at < expires_at));
comment on column password_reset.made_by is 'Null where it was made at the server''s console';
comment on column password_reset.ended_at is 'When it was used, or a newer one took its place';
create index password_reset_open on password_reset (person) where ended_at is null;
call make_changeable('password_reset', 'update (ended_at)');
