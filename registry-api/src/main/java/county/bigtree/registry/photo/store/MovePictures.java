package county.bigtree.registry.photo.store;

import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Moves pictures from the database to the object store and back, photo by photo, while
 * others send, see and erase them. Interrupted, it can be begun again.
 */
@Service
public class MovePictures {

	private static final int AT_ONCE = 200;

	private final StoredPictures stored;

	private final JdbcClient jdbc;

	private final TransactionTemplate transaction;

	MovePictures(StoredPictures stored, JdbcClient jdbc, PlatformTransactionManager transactions) {
		this.stored = stored;
		this.jdbc = jdbc;
		this.transaction = new TransactionTemplate(transactions);
	}

	/**
	 * Moves all that stand in the database.
	 * @param progress hears how many pictures have been moved
	 * @return how many
	 * @throws StoreAway if the store does not take them
	 */
	public long toStore(LongConsumer progress) {
		return all("body is not null", progress, this::photoToStore);
	}

	/**
	 * Moves all that stand in the object store.
	 * @throws StoreAway if it does not give them, or another picture than was put
	 */
	public long toDatabase(LongConsumer progress) {
		return all("object is not null", progress, this::photoToDatabase);
	}

	/**
	 * Moves all to the object store, if that takes new ones.
	 */
	public void toWhereNewOnesGo(LongConsumer progress) {
		if (this.stored.takeNew()) {
			toStore(progress);
		}
	}

	private long all(String where, LongConsumer progress, Move move) {
		long moved = 0;
		UUID last = new UUID(0, 0);
		while (true) {
			List<UUID> photos = this.jdbc
				.sql("select distinct photo from photo_body where %s and photo > ? order by photo limit %d"
					.formatted(where, AT_ONCE))
				.param(last)
				.query(UUID.class)
				.list();
			if (photos.isEmpty()) {
				return moved;
			}
			for (UUID photo : photos) {
				moved += move.move(photo);
				progress.accept(moved);
			}
			last = photos.get(photos.size() - 1);
		}
	}

	private int photoToStore(UUID photo) {
		List<Moving> pictures = this.jdbc
			.sql("select width, salt, body from photo_body where photo = ? and body is not null")
			.param(photo)
			.query((row, number) -> {
				byte[] body = row.getBytes("body");
				byte[] digest = StoredPictures.digest(row.getBytes("salt"), body);
				return new Moving(row.getInt("width"), this.stored.put(body), digest, body);
			})
			.list();
		return moved(photo, pictures, (one) -> {
			this.stored.take(one.object());
			return this.jdbc.sql("""
					update photo_body set body = null, object = :object, digest = :digest
					where photo = :photo and width = :width and body is not null""")
				.param("object", one.object())
				.param("digest", one.digest())
				.param("photo", photo)
				.param("width", one.width())
				.update();
		});
	}

	private int photoToDatabase(UUID photo) {
		List<Moving> pictures = this.jdbc
			.sql("select width, object, salt, digest from photo_body where photo = ? and object is not null")
			.param(photo)
			.query((row, number) -> {
				String object = row.getString("object");
				byte[] body = this.stored.find(object, row.getBytes("salt"), row.getBytes("digest"))
					.orElseThrow(() -> new StoreAway("The object " + object + " of the photo " + photo
							+ " is not there, or another one: \"verify\" lists all such photos"));
				return new Moving(row.getInt("width"), object, row.getBytes("digest"), body);
			})
			.list();
		return moved(photo, pictures, (one) -> {
			int noted = this.stored.leave(one.object());
			return noted * this.jdbc
				.sql("update photo_body set body = :body, object = null, digest = null where object = :object")
				.param("body", one.body())
				.param("object", one.object())
				.update();
		});
	}

	/** All of a photo, or nothing where it was erased meanwhile. */
	private int moved(UUID photo, List<Moving> pictures, Change change) {
		Integer moved = this.transaction.execute((status) -> {
			int done = 0;
			// Whoever erases or moves it too waits, or has done so.
			int there = this.jdbc.sql("select width from photo_body where photo = ? order by width for update")
				.param(photo)
				.query(Integer.class)
				.list()
				.size();
			for (Moving one : (there > 0) ? pictures : List.<Moving>of()) {
				done += change.apply(one);
			}
			if (done != pictures.size()) {
				status.setRollbackOnly();
				return 0;
			}
			return done;
		});
		return (moved != null) ? moved : 0;
	}

	/** Moves the pictures of a photo, and answers how many. */
	private interface Move {

		int move(UUID photo);

	}

	/** Changes a row, and answers how many rows that were. */
	private interface Change {

		int apply(Moving picture);

	}

	@SuppressWarnings("ArrayRecordComponent")
	private record Moving(int width, String object, byte[] digest, byte[] body) {
	}

}
