-- How the filed figures stood to the verifier's own when the sign-off was given: numbers, tolerances, allowed growth and
-- verdicts, which later rules and formulas don't change. Null where nothing was compared, and for sign-offs given before
-- this was kept.
alter table sign_off add column agreement jsonb constraint sign_off_agreement_filled check (jsonb_array_length(agreement) > 0)
  constraint sign_off_agreement_needs_own check (agreement is null or own_measurement is not null);
