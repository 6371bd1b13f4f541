-- What a verifier is to look at.
create index nomination_of_verifier on nomination (verifier) where verifier is not null;
create index measurement_move_of_verifier on measurement_move (verifier) where verifier is not null;
