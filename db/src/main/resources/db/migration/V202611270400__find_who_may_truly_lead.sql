-- Finds the trees that may truly be larger than a given one without reading all of their species: those whose points, with six
-- times their standard uncertainty, reach it.
create index score_within_doubt on score (county, species, (points + 6 * points_u))
  where withdrawn_at is null and ends_on is null;
