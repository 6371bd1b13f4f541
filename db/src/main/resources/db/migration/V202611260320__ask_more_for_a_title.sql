-- By which methods a score's figures were taken, those that stand in for others too: it decides whether it may hold a title.
alter table score add column girth_by text, add column height_by text, add column crown_by text;
alter table score disable trigger score_never_rewritten;
update score s set
  girth_by = (select readings #>> '{girth,method}' from measurement where id = s.measurement),
  height_by = (select readings #>> '{height,method}' from measurement where id = coalesce(s.height_from, s.measurement)),
  crown_by = (select readings #>> '{crown,method}' from measurement where id = coalesce(s.crown_from, s.measurement));
alter table score enable trigger score_never_rewritten;

create or replace function refuse_score_change() returns trigger language plpgsql as $$
begin
  if (new.county, new.species, new.tree, new.measurement, new.points, new.points_u, new.measured_on, new.seen_on,
      new.lost_on, new.carried_over, new.effective_on, new.recorded_at, new.height_from, new.crown_from, new.girth_by,
      new.height_by, new.crown_by)
     is distinct from
     (old.county, old.species, old.tree, old.measurement, old.points, old.points_u, old.measured_on, old.seen_on,
      old.lost_on, old.carried_over, old.effective_on, old.recorded_at, old.height_from, old.crown_from, old.girth_by,
      old.height_by, old.crown_by) then
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

-- A sign-off that would change who holds a title, where the rules ask for a coordinator's yes: judged once, when it was
-- given. Until the yes it does nothing.
create table sign_off_deferral (
  sign_off uuid constraint sign_off_deferral_pk primary key constraint sign_off_deferral_sign_off references sign_off,
  county text not null constraint sign_off_deferral_county references county,
  seq bigint not null,
  recorded_at timestamptz not null
);
create index sign_off_deferral_change on sign_off_deferral (county, seq);

create table sign_off_assent (
  sign_off uuid constraint sign_off_assent_pk primary key
    constraint sign_off_assent_deferral references sign_off_deferral,
  county text not null constraint sign_off_assent_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint sign_off_assent_by references person,
  reason uuid constraint sign_off_assent_reason references text_piece
);
create index sign_off_assent_change on sign_off_assent (county, seq);

call make_append_only('sign_off_deferral');
call make_append_only('sign_off_assent');

-- Whether a sign-off waits for a coordinator's yes.
create function sign_off_waits(asked uuid) returns boolean language sql stable as $$
  select exists (select from sign_off_deferral where sign_off = asked)
    and not exists (select from sign_off_assent where sign_off = asked)
$$;

create or replace function measurement_counts(asked uuid) returns boolean language sql stable as $$
  select not exists (select from setting_aside where measurement = m.id)
    and case
      when m.basis = 'carried-over' then true
      when b.id is not null then brought_full(m.id) and not exists (select from revocation where sign_off = b.id)
        and not sign_off_waits(b.id)
      else coalesce((select count(*) filter (where s.verdict = 'confirmed' and not r.revoked)
          >= greatest(1, (select required from sign_off_requirement where measurement = m.id))
          and not bool_or(brought_full(s.own_measurement) or s.verdict = 'not-confirmed' and not r.revoked)
        from sign_off s
        cross join lateral (select exists (select from revocation where sign_off = s.id) as revoked) r
        where s.measurement = m.id and not sign_off_waits(s.id)), false)
    end
  from measurement m left join sign_off b on b.own_measurement = m.id where m.id = asked
$$;
