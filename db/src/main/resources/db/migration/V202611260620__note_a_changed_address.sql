-- The address that one signs in with may be changed by the one whose it is.
alter table sign_in_event drop constraint sign_in_event_known;
alter table sign_in_event add constraint sign_in_event_known check (event in ('signed-in', 'password-given', 'failed', 'held-back',
	'signed-out', 'signed-out-everywhere', 'password-changed', 'email-changed', 'reset-made', 'password-reset'));
