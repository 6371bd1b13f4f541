-- A visit may lack a figure: it is kept, and gives no score alone.
alter table reduction
  alter column girth_inches drop not null, alter column girth_u drop not null,
  alter column height_feet drop not null, alter column height_u drop not null,
  alter column crown_feet drop not null, alter column crown_u drop not null,
  alter column points drop not null, alter column points_u drop not null,
  add constraint reduction_has_a_figure check (num_nonnulls(girth_inches, height_feet, crown_feet) > 0),
  add constraint reduction_figures_are_whole check ((girth_inches is null) = (girth_u is null)
    and (height_feet is null) = (height_u is null) and (crown_feet is null) = (crown_u is null)
    and (points is null) = (points_u is null)),
  add constraint reduction_points_need_all check ((points is null) = (num_nulls(girth_inches, height_feet, crown_feet) > 0));

-- For how many years earlier figures stand in for those that it lacks, by the rules of its day as known when it was
-- filed; null where it lacks none. And where its day is known only as a month or a year, measured_on is the last of it.
alter table measurement
  add column carry_height_years int constraint measurement_carry_height_years_range check (carry_height_years between 0 and 20),
  add column carry_crown_years int constraint measurement_carry_crown_years_range check (carry_crown_years between 0 and 20),
  add column measured_on_known_to text constraint measurement_measured_on_known_to_known
    check (measured_on_known_to in ('month', 'year'));

-- The earlier measurements whose figures stand in.
alter table score
  add column height_from uuid constraint score_height_from references measurement,
  add column crown_from uuid constraint score_crown_from references measurement;

create or replace function refuse_score_change() returns trigger language plpgsql as $$
begin
  if (new.county, new.species, new.tree, new.measurement, new.points, new.points_u, new.measured_on, new.seen_on,
      new.lost_on, new.carried_over, new.effective_on, new.recorded_at, new.height_from, new.crown_from)
     is distinct from
     (old.county, old.species, old.tree, old.measurement, old.points, old.points_u, old.measured_on, old.seen_on,
      old.lost_on, old.carried_over, old.effective_on, old.recorded_at, old.height_from, old.crown_from) then
    raise exception 'a score is never rewritten' using errcode = 'integrity_constraint_violation';
  end if;
  if old.closed_at is not null and (new.ends_on, new.ended, new.closed_at)
     is distinct from (old.ends_on, old.ended, old.closed_at) then
    raise exception 'a score is closed once' using errcode = 'integrity_constraint_violation';
  end if;
  if old.withdrawn_at is not null then
    raise exception 'a score is withdrawn once and then stays as it is' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;

-- Whether a measurement that a sign-off brought has all three figures: only then it takes the place of the filed one.
create function brought_full(own uuid) returns boolean language sql stable as $$
  select exists (select from reduction where measurement = own and points is not null)
$$;

-- A measuring day as exactly as it is known: 2026-05-02, 2026-05 or 2026.
create function known_day(last date, known_to text) returns text language sql immutable return
  to_char(last, case known_to when 'year' then 'YYYY' when 'month' then 'YYYY-MM' else 'YYYY-MM-DD' end);

-- When something began may be known only as between two days: began_on is then the later one.
alter table condition_decision
  add column began_earliest date,
  add constraint condition_decision_between_in_order check (began_earliest < began_on);
