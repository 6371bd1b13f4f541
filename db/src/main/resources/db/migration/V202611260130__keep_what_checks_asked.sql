-- What the checks had to say on a measurement when it was filed: its questions were answered then. Null where nothing was odd.
alter table measurement add column checks jsonb constraint measurement_checks_filled check (jsonb_array_length(checks) > 0);
create index location_place on location (stands_in, latitude, longitude);
