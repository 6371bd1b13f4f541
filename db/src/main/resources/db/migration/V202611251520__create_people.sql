create table person (
	id uuid not null,
	email text not null,
	credit_name text not null,
	password_hash text not null,
	active boolean not null default true,
	created_at timestamptz not null,
	constraint person_pk primary key (id),
	constraint person_email check (email = btrim(email) and position('@' in email) between 2 and length(email) - 1 and length(email) <= 254),
	constraint person_credit_name check (credit_name = btrim(credit_name) and length(credit_name) between 1 and 100));
comment on column person.credit_name is 'The name under which the person is credited; need not be the legal one';
comment on column person.password_hash is 'Argon2id, with its parameters and salt';
create unique index person_email_once on person (lower(email));
call make_changeable('person', 'update (email, credit_name, password_hash, active)');

-- A role that ends keeps its row, so that who held which role on any day can be asked.
create table role_assignment (
	id uuid not null,
	person uuid not null,
	county text,
	role text not null,
	from_at timestamptz not null,
	until_at timestamptz,
	given_by uuid,
	constraint role_assignment_pk primary key (id),
	constraint role_assignment_person foreign key (person) references person,
	constraint role_assignment_given_by foreign key (given_by) references person,
	constraint role_assignment_role check (role in ('volunteer', 'verifier', 'coordinator', 'administrator')),
	constraint role_assignment_county check ((county is null) = (role = 'administrator')),
	constraint role_assignment_span check (from_at < until_at),
	constraint role_assignment_once_at_a_time exclude using gist
		(person with =, (coalesce(county, '')) with =, role with =, tstzrange(from_at, until_at) with &&));
comment on column role_assignment.county is 'Null for the administrator, who runs the service and not a county';
comment on column role_assignment.given_by is 'Null where the service itself gave it: the first administrator, the demo';
create index role_assignment_county_now on role_assignment (county, person) where until_at is null;
call make_changeable('role_assignment', 'update (until_at)');

create table access_token (
	id uuid not null,
	person uuid not null,
	name text not null,
	hash bytea not null,
	last4 text not null,
	created_at timestamptz not null,
	expires_on date not null,
	revoked_at timestamptz,
	constraint access_token_pk primary key (id),
	constraint access_token_person foreign key (person) references person,
	constraint access_token_hash unique (hash),
	constraint access_token_name check (length(name) between 1 and 100),
	constraint access_token_hash_length check (length(hash) = 32));
comment on column access_token.hash is 'SHA-256 of the token, which is 256 random bits; the token itself is shown once and kept nowhere';
comment on column access_token.last4 is 'The last four characters, by which its owner tells tokens apart';
comment on column access_token.expires_on is 'The last day, in UTC, on which it works';
create index access_token_of on access_token (person, created_at);
call make_changeable('access_token', 'update (revoked_at)');

create table invitation (
	id uuid not null,
	email text not null,
	credit_name text,
	hash bytea not null,
	created_at timestamptz not null,
	expires_at timestamptz not null,
	invited_by uuid,
	accepted_at timestamptz,
	accepted_by uuid,
	constraint invitation_pk primary key (id),
	constraint invitation_hash unique (hash),
	constraint invitation_hash_length check (length(hash) = 32),
	constraint invitation_invited_by foreign key (invited_by) references person,
	constraint invitation_accepted_by foreign key (accepted_by) references person,
	constraint invitation_accepted check ((accepted_at is null) = (accepted_by is null)),
	constraint invitation_span check (created_at < expires_at));
comment on column invitation.invited_by is 'Null for the invitation of the first administrator';
call make_changeable('invitation', 'update (accepted_at, accepted_by)');

create table invitation_role (
	invitation uuid not null,
	county text,
	role text not null,
	constraint invitation_role_invitation foreign key (invitation) references invitation,
	constraint invitation_role_once unique nulls not distinct (invitation, county, role),
	constraint invitation_role_role check (role in ('volunteer', 'verifier', 'coordinator', 'administrator')),
	constraint invitation_role_county check ((county is null) = (role = 'administrator')));
call make_append_only('invitation_role');
