-- Whether a measurement counts now, and whether it came with a nomination: asked of each that may wait and at each sign-off.
create index score_of_measurement on score (measurement) where withdrawn_at is null;
create index nomination_of_measurement on nomination (measurement);
