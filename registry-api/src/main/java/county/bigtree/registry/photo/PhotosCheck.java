package county.bigtree.registry.photo;

import java.time.Duration;
import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.photo.store.StoreAway;
import county.bigtree.registry.photo.store.StoredPictures;

import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The pictures of photos are those of which the facts hold the digest, none are missing
 * but those of which it is recorded that they were erased, also from the object store,
 * and no sheet of paper was passed.
 */
@Component
@Order(2)
class PhotosCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private static final Duration TO_DELETE = Duration.ofDays(1);

	private static final String PHOTOS = """
			select p.county, p.seq, p.id::text as id, b.pictures,
			  exists (select from photo_erasure where photo = p.id) as erased,
			  coalesce(b.digest = p.digest and b.widest = p.width, false) as same,
			  p.shows = 'sheet' and exists (select from photo_decision where photo = p.id and decision = 'pass') as sheet
			from photo p cross join lateral (
			  select count(*) as pictures, max(width) as widest,
			    sha256(string_agg(coalesce(digest, sha256(salt || body)), ''::bytea order by width)) as digest
			  from photo_body where photo = p.id) b""";

	private static final String OBJECTS = """
			select p.county, p.seq, p.id::text as id, b.width, b.object, b.salt, b.digest
			from photo_body b join photo p on p.id = b.photo where b.object is not null order by b.photo, b.width""";

	private final JdbcClient jdbc;

	private final StoredPictures stored;

	private final RegisterClock clock;

	PhotosCheck(JdbcClient jdbc, StoredPictures stored, RegisterClock clock) {
		this.jdbc = jdbc;
		this.stored = stored;
		this.clock = clock;
	}

	@Override
	public String subject() {
		return "photos";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from photo").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		try (Stream<Kept> photos = photos()) {
			photos.forEach((photo) -> {
				findings.looked();
				String fault = photo.fault();
				if (!fault.isEmpty()) {
					findings.add("%s: the photo %s (change %d) %s".formatted(photo.county(), photo.id(), photo.seq(),
							fault));
				}
			});
		}
		lookAtObjects(findings);
		lookForLeftOnes(findings);
	}

	private void lookAtObjects(Findings findings) {
		try (Stream<InStore> pictures = objects()) {
			pictures.forEach((picture) -> {
				if (!this.stored.find(picture.object(), picture.salt(), picture.digest()).isPresent()
						&& this.stored.isNamed(picture.object())) {
					findings.add(
							"%s: the photo %s (change %d) has lost its picture of width %d in the object store, or has another one there"
								.formatted(picture.county(), picture.id(), picture.seq(), picture.width()));
				}
			});
		}
		catch (StoreAway ex) {
			findings.add("The pictures in the object store could not all be looked at: " + ex.getMessage());
		}
	}

	private void lookForLeftOnes(Findings findings) {
		long left = this.jdbc.sql("select count(*) from unnamed_object where why = 'erased' and since < ?")
			.param(SqlTime.of(this.clock.now().minus(TO_DELETE)))
			.query(Long.class)
			.single();
		if (left > 0) {
			findings.add("%,d pictures that were erased over a day ago still wait to be deleted from the object store"
				.formatted(left));
		}
	}

	private Stream<InStore> objects() {
		return this.jdbc.sql(OBJECTS)
			.withFetchSize(FETCH)
			.query((row, number) -> new InStore(row.getString("county"), row.getLong("seq"), row.getString("id"),
					row.getInt("width"), row.getString("object"), row.getBytes("salt"), row.getBytes("digest")))
			.stream();
	}

	private Stream<Kept> photos() {
		return this.jdbc.sql(PHOTOS)
			.withFetchSize(FETCH)
			.query((row, number) -> new Kept(row.getString("county"), row.getLong("seq"), row.getString("id"),
					row.getInt("pictures"), row.getBoolean("erased"), row.getBoolean("same"), row.getBoolean("sheet")))
			.stream();
	}

	@SuppressWarnings("ArrayRecordComponent")
	private record InStore(String county, long seq, String id, int width, String object, byte[] salt, byte[] digest) {
	}

	private record Kept(String county, long seq, String id, int pictures, boolean erased, boolean same, boolean sheet) {

		String fault() {
			if (this.sheet) {
				return "shows a sheet of paper and was passed";
			}
			if (this.erased) {
				return (this.pictures > 0) ? "was erased and its pictures are still there" : "";
			}
			if (this.pictures == 0) {
				return "has lost its pictures";
			}
			return this.same ? "" : "has other pictures than those that were recorded";
		}

	}

}
