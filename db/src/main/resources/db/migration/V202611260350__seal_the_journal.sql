-- A county's chain runs over the digests of its entries, no longer over the entries, so that it can be followed by anyone
-- who is given the digests alone: hash = sha256(the hash before it || sha256(entry)). Nothing had been published of the
-- chains as they were.
alter table change disable trigger refuse_change;

do $$
declare
  head text;
  one record;
  last bytea;
begin
  for head in select county from county_head order by county loop
    last := '';
    for one in select seq, sha256(entry) as digest from change where county = head order by seq loop
      last := sha256(last || one.digest);
      update change set hash = last where county = head and seq = one.seq;
    end loop;
    update county_head set chain = last where county = head and seq > 0;
  end loop;
end $$;

alter table change enable always trigger refuse_change;

-- Once a day the heads of all counties are sealed together, and each seal is chained to the one before.
create table seal (
  number bigint constraint seal_pk primary key constraint seal_number_counts check (number > 0),
  day date not null constraint seal_day_unique unique,
  sealed_at timestamptz not null,
  body bytea not null,
  hash bytea not null
);
comment on column seal.body is 'JSON of day, heads (county, hash, seq), instant and number, as it was hashed';
comment on column seal.hash is 'sha256(the hash of the seal before || sha256(body))';
call make_append_only('seal');
