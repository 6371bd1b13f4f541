-- A visit may be planned for somebody who is no verifier of the county: they verify at that tree until something came of it.
alter table visit add column guest boolean constraint visit_guest_or_not_said check (guest);
create index visit_of_guest on visit (verifier, tree) where guest;
