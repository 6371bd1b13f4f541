-- By these a county finds what waits for it: what was filed there, and what came with a tree that was moved there since.
create index measurement_filed on measurement (county) where basis = 'filed';
create index location_arrived on location (stands_in) where county <> stands_in;
