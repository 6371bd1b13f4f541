-- The next tags of a county that no tree of the register has and that are not among those given; whoever asks holds the head.
create function next_tags(of_county text, many int, taken text[]) returns setof text language plpgsql as $$
declare
  prefix text;
  number int;
  next_tag text;
begin
  select c.tag_prefix, h.last_tag into strict prefix, number
  from county_head h join county c on c.key = h.county where h.county = of_county;
  while many > 0 loop
    number := number + 1;
    next_tag := prefix || '-' || lpad(number::text, greatest(4, length(number::text)), '0');
    if next_tag <> all (taken) and not exists (select from tree where tag = next_tag) then
      many := many - 1;
      return next next_tag;
    end if;
  end loop;
  update county_head set last_tag = number where county = of_county;
end $$;
