package county.bigtree.registry.photo;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.photo.image.Picture;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Keeps the pictures of photos beside the facts, so that they can be erased: the fact
 * holds their digest, which is the SHA-256 of the SHA-256s of salt and picture, one after
 * the other by width. Each has a salt of its own, and without it nobody can tell from a
 * digest whether a picture that they have is the one that was erased.
 */
@Component
class KeepPictures {

	private static final SecureRandom RANDOM = new SecureRandom();

	private static final int SALT_BYTES = 16;

	private final JdbcClient jdbc;

	KeepPictures(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** The pictures, the narrowest first, each with a salt. */
	static List<Salted> salted(List<Picture> pictures) {
		return pictures.stream().map((picture) -> {
			byte[] salt = new byte[SALT_BYTES];
			RANDOM.nextBytes(salt);
			return new Salted(picture, salt);
		}).toList();
	}

	static byte[] digest(List<Salted> pictures) {
		MessageDigest all = sha256();
		for (Salted one : pictures) {
			MessageDigest single = sha256();
			single.update(one.salt());
			all.update(single.digest(one.picture().jpeg()));
		}
		return all.digest();
	}

	void keep(UUID photo, List<Salted> pictures) {
		for (Salted one : pictures) {
			this.jdbc.sql("insert into photo_body (photo, width, height, salt, body) values (?, ?, ?, ?, ?)")
				.params(photo, one.picture().width(), one.picture().height(), one.salt(), one.picture().jpeg())
				.update();
		}
	}

	/** The narrowest that is so wide, else the widest; the widest where none is asked. */
	Optional<byte[]> find(UUID photo, @Nullable Integer width) {
		return this.jdbc
			.sql("""
					select body from photo_body where photo = :photo
					order by width < coalesce(:width, 2147483647), case when width >= coalesce(:width, 2147483647) then width
					  else -width end limit 1""")
			.param("photo", photo)
			.param("width", width, java.sql.Types.INTEGER)
			.query((row, number) -> row.getBytes("body"))
			.optional();
	}

	void drop(UUID photo) {
		this.jdbc.sql("delete from photo_body where photo = ?").param(photo).update();
	}

	private static MessageDigest sha256() {
		try {
			return MessageDigest.getInstance("SHA-256");
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

	/**
	 * A picture with its salt.
	 */
	@SuppressWarnings("ArrayRecordComponent")
	record Salted(Picture picture, byte[] salt) {
	}

}
