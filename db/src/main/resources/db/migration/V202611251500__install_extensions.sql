create extension if not exists btree_gist;
create extension if not exists pg_trgm;
create extension if not exists unaccent;
