package county.bigtree.registry.photo;

import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;

import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The pictures of photos are those of which the facts hold the digest, none are missing
 * but those of which it is recorded that they were erased, and no sheet of paper was
 * passed.
 */
@Component
@Order(2)
class PhotosCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private static final String PHOTOS = """
			select p.county, p.seq, p.id::text as id, b.pictures,
			  exists (select from photo_erasure where photo = p.id) as erased,
			  coalesce(b.digest = p.digest and b.widest = p.width, false) as same,
			  p.shows = 'sheet' and exists (select from photo_decision where photo = p.id and decision = 'pass') as sheet
			from photo p cross join lateral (
			  select count(*) as pictures, max(width) as widest,
			    sha256(string_agg(sha256(salt || body), ''::bytea order by width)) as digest
			  from photo_body where photo = p.id) b""";

	private final JdbcClient jdbc;

	PhotosCheck(JdbcClient jdbc) {
		this.jdbc = jdbc;
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
	}

	private Stream<Kept> photos() {
		return this.jdbc.sql(PHOTOS)
			.withFetchSize(FETCH)
			.query((row, number) -> new Kept(row.getString("county"), row.getLong("seq"), row.getString("id"),
					row.getInt("pictures"), row.getBoolean("erased"), row.getBoolean("same"), row.getBoolean("sheet")))
			.stream();
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
