package county.bigtree.registry.photo;

import java.util.List;
import java.util.Objects;
import java.util.UUID;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.ErasePieces;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.AuthoredWords;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Erases photos for good: their pictures in all sizes, and what was said of them. That
 * there was a photo, who sent it and the digest of its pictures stay on record, and so
 * does that it was erased.
 */
@Service
public class ErasePhotos implements AuthoredWords {

	private static final String WORDS = """
			select words from photo where id = :photo union select credit from photo where id = :photo
			union select words from photo_decision where photo = :photo
			union select reason from photo_decision where photo = :photo""";

	private final ShowPhotos showing;

	private final Journal journal;

	private final Facts facts;

	private final ErasePieces erasing;

	private final KeepPictures keeping;

	private final JdbcClient jdbc;

	ErasePhotos(ShowPhotos showing, Journal journal, Facts facts, ErasePieces erasing, KeepPictures keeping,
			JdbcClient jdbc) {
		this.showing = showing;
		this.journal = journal;
		this.facts = facts;
		this.erasing = erasing;
		this.keeping = keeping;
		this.jdbc = jdbc;
	}

	/**
	 * Erases one, for who sent it, or by a coordinator for whom it concerns.
	 */
	@Transactional
	public void erase(Actor actor, UUID id) {
		Photo photo = this.showing.get(id, actor).photo();
		boolean own = actor.id().equals(photo.by());
		if (!own && !actor.isCoordinatorOf(photo.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only who sent a photo and the county's coordinators erase it.");
		}
		Change change = this.journal.open(photo.county());
		this.showing.get(id, actor);
		erase(change, id, actor.id(), own ? "asked-by-author" : "asked-by-subject");
		this.journal.close(change, "photos-erased", actor.id());
	}

	/** All that a person sent, in each county by one change. */
	@Override
	public void erase(UUID author, UUID by, String ground) {
		for (String county : counties(author)) {
			Change change = this.journal.open(county);
			this.jdbc.sql("""
					select id from photo p where by_person = ? and county = ?
					  and not exists (select from photo_erasure where photo = p.id) order by id""")
				.params(author, county)
				.query(UUID.class)
				.list()
				.forEach((photo) -> erase(change, photo, by, ground));
			this.journal.close(change, "photos-erased", by);
		}
	}

	private List<String> counties(UUID author) {
		return this.jdbc.sql("""
				select distinct county from photo p where by_person = ?
				  and not exists (select from photo_erasure where photo = p.id) order by county""")
			.param(author)
			.query(String.class)
			.list();
	}

	private void erase(Change change, UUID photo, UUID by, String ground) {
		this.facts.append(change, FactTable.PHOTO_ERASURE, "photo", photo, "by_person", by, "ground", ground);
		this.keeping.drop(photo);
		List<UUID> words = this.jdbc.sql(WORDS)
			.param("photo", photo)
			.query(UUID.class)
			.list()
			.stream()
			.filter(Objects::nonNull)
			.toList();
		this.erasing.erase(change, words, by);
		// What was answered is kept for those who ask again, and tells all of it.
		this.jdbc.sql("delete from keyed_answer where location = :photo or path like :photo || '/%'")
			.param("photo", "/api/v1/photos/" + photo)
			.update();
	}

}
