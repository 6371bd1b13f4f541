-- Whether all owners of a tree, with all that it is merged with, let it be listed on the day of the instant.
create function is_listed(asked uuid, at timestamptz) returns boolean language sql stable as $$
  select owners = to_listing from owners_consent(asked, at)
$$;
