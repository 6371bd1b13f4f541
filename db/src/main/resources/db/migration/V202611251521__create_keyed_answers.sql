-- What was answered to a request with an Idempotency-Key, written in the transaction that did what was asked.
create table keyed_answer (
	account uuid not null,
	method text not null,
	path text not null,
	key text not null,
	request_hash bytea not null,
	status integer not null,
	content_type text,
	location text,
	revision bigint,
	body bytea not null,
	answered_at timestamptz not null,
	constraint keyed_answer_pk primary key (account, method, path, key),
	constraint keyed_answer_account foreign key (account) references person,
	constraint keyed_answer_key check (key ~ '^[!-~]{1,128}$'),
	constraint keyed_answer_status check (status between 200 and 299));
create index keyed_answer_age on keyed_answer (answered_at);
call make_changeable('keyed_answer', 'delete');
