alter table access_token add column scope text not null default 'all'
	constraint access_token_scope check (scope in ('read', 'file', 'all'));
comment on column access_token.scope is 'read: reads what its owner may read. file: reads and files as a volunteer. all: whatever its owner may do';
alter table access_token add column last_used_on date;
comment on column access_token.last_used_on is 'In UTC; a day and no closer, so that it is written once a day';
call make_changeable('access_token', 'update (last_used_on)');
