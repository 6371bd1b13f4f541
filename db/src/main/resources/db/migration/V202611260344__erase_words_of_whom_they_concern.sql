-- Words may be erased for whom they concern too: an owner, the writer of a letter, somebody for whom was filed.
alter table text_erasure drop constraint text_erasure_ground_known;
alter table text_erasure add constraint text_erasure_ground_known
  check (ground in ('asked-by-author', 'by-administrator', 'asked-by-subject'));
