package county.bigtree.registry.photo;

import java.security.MessageDigest;
import java.security.SecureRandom;
import java.sql.Types;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.photo.image.Picture;
import county.bigtree.registry.photo.store.StoreAway;
import county.bigtree.registry.photo.store.StoredPictures;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Keeps the pictures of photos beside the facts, so that they can be erased: the fact
 * holds their digest, which is the SHA-256 of the SHA-256s of salt and picture, one after
 * the other by width. Each has a salt of its own, and without it nobody can tell from a
 * digest whether a picture that they have is the one that was erased. They stand in the
 * database, or in an object store with their digest in the database.
 */
@Component
class KeepPictures {

	private static final Logger logger = LoggerFactory.getLogger(KeepPictures.class);

	private static final SecureRandom RANDOM = new SecureRandom();

	private static final int SALT_BYTES = 16;

	private static final Duration COME_BACK = Duration.ofSeconds(5);

	private final JdbcClient jdbc;

	private final StoredPictures stored;

	KeepPictures(JdbcClient jdbc, StoredPictures stored) {
		this.jdbc = jdbc;
		this.stored = stored;
	}

	/**
	 * Salts the pictures, the narrowest first, and puts them into the object store if
	 * that takes new ones.
	 * @throws Problem of being busy if it is away
	 */
	List<Salted> prepare(List<Picture> pictures) {
		List<Salted> prepared = new ArrayList<>();
		try {
			for (Picture picture : pictures) {
				byte[] salt = new byte[SALT_BYTES];
				RANDOM.nextBytes(salt);
				String object = this.stored.takeNew() ? this.stored.put(picture.jpeg()) : null;
				prepared.add(new Salted(picture, salt, StoredPictures.digest(salt, picture.jpeg()), object));
			}
			return List.copyOf(prepared);
		}
		catch (StoreAway ex) {
			throw away(ex, "Photos can't be kept right now, and nothing was recorded. Send it again shortly.");
		}
	}

	static byte[] digest(List<Salted> pictures) {
		MessageDigest all = StoredPictures.sha256();
		pictures.forEach((one) -> all.update(one.digest()));
		return all.digest();
	}

	/** Keeps what was prepared, by the transaction that records the photo. */
	void keep(UUID photo, List<Salted> pictures) {
		for (Salted one : pictures) {
			boolean here = one.object() == null;
			if (one.object() != null) {
				take(one.object());
			}
			this.jdbc.sql(
					"insert into photo_body (photo, width, height, salt, body, object, digest) values (:photo, :width, "
							+ ":height, :salt, :body, :object, :digest)")
				.param("photo", photo)
				.param("width", one.picture().width())
				.param("height", one.picture().height())
				.param("salt", one.salt())
				.param("body", here ? one.picture().jpeg() : null, Types.BINARY)
				.param("object", one.object(), Types.VARCHAR)
				.param("digest", here ? null : one.digest(), Types.BINARY)
				.update();
		}
	}

	private void take(String object) {
		try {
			this.stored.take(object);
		}
		catch (StoreAway ex) {
			throw away(ex, "This took too long, and nothing was recorded. Send it again.");
		}
	}

	/** The narrowest that is so wide, else the widest; the widest where none is asked. */
	Optional<Kept> find(UUID photo, @Nullable Integer width) {
		return this.jdbc
			.sql("""
					select body, object, salt, digest from photo_body where photo = :photo
					order by width < coalesce(:width, 2147483647), case when width >= coalesce(:width, 2147483647) then width
					  else -width end limit 1""")
			.param("photo", photo)
			.param("width", width, Types.INTEGER)
			.query((row, number) -> new Kept(row.getBytes("body"), row.getString("object"), row.getBytes("salt"),
					row.getBytes("digest")))
			.optional();
	}

	/**
	 * The picture itself. Not to be asked within a transaction: the object store may keep
	 * one waiting.
	 * @return nothing if there is none or another one in the object store
	 * @throws Problem of being busy if that is away
	 */
	Optional<byte[]> open(Kept kept) {
		if (kept.body() != null) {
			return Optional.of(kept.body());
		}
		try {
			return this.stored.find(Objects.requireNonNull(kept.object()), kept.salt(),
					Objects.requireNonNull(kept.digest()));
		}
		catch (StoreAway ex) {
			throw away(ex, "Photos can't be shown right now. Try again shortly.");
		}
	}

	void drop(UUID photo) {
		this.stored.leaveAllOf(photo);
		this.jdbc.sql("delete from photo_body where photo = ?").param(photo).update();
	}

	private static Problem away(StoreAway cause, String sentence) {
		logger.warn("Photos: {}", cause.getMessage());
		return Problem.of(ProblemType.BUSY, sentence).retryAfter(COME_BACK);
	}

	/**
	 * A picture with its salt.
	 *
	 * @param digest the SHA-256 of both
	 * @param object in the object store; null for a picture that goes into the database
	 */
	@SuppressWarnings("ArrayRecordComponent")
	record Salted(Picture picture, byte[] salt, byte[] digest, @Nullable String object) {
	}

	/**
	 * Where a picture is.
	 *
	 * @param body the picture; null if it is in the object store
	 * @param object its name there
	 * @param digest the SHA-256 of salt and picture, of one in the object store
	 */
	@SuppressWarnings("ArrayRecordComponent")
	record Kept(byte @Nullable [] body, @Nullable String object, byte[] salt, byte @Nullable [] digest) {
	}

}
