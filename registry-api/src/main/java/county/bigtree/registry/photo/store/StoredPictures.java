package county.bigtree.registry.photo.store;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Pictures in the object store. Before an object is put its name is noted among those
 * that no picture names, and taken off that list by the transaction that records the
 * picture: if that comes to nothing, whatever the reason, the object is deleted when it
 * is due. Names are drawn, so that a register restored from an archive never shares an
 * object with the archived one, and nobody who knows a photo's id knows its object.
 */
@Component
public class StoredPictures {

	/** Recording a photo takes seconds. */
	static final Duration TO_RECORD = Duration.ofHours(1);

	private final @Nullable ObjectStore store;

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	private final TransactionTemplate apart;

	StoredPictures(ObjectProvider<ObjectStore> store, JdbcClient jdbc, RegisterClock clock,
			PlatformTransactionManager transactions) {
		this.store = store.getIfAvailable();
		this.jdbc = jdbc;
		this.clock = clock;
		this.apart = new TransactionTemplate(transactions);
		this.apart.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
	}

	/** Whether the pictures of new photos go there. */
	public boolean takeNew() {
		return this.store != null && this.store.takesNew();
	}

	/**
	 * Puts a picture, and answers the name of its object, which has to be taken by
	 * {@link #take(String)}.
	 * @throws StoreAway if it is not there for good
	 */
	public String put(byte[] jpeg) {
		ObjectStore there = there();
		String object = UUID.randomUUID() + ".jpg";
		Instant now = this.clock.now();
		this.apart.executeWithoutResult((status) -> note(object, "put", now, now.plus(TO_RECORD)));
		there.put(object, jpeg);
		return object;
	}

	private void note(String object, String why, Instant now, Instant due) {
		this.jdbc.sql("insert into unnamed_object (object, why, due_at, since) values (?, ?, ?, ?)")
			.params(object, why, SqlTime.of(due), SqlTime.of(now))
			.update();
	}

	/**
	 * Takes an object that was put, for a picture that is recorded by the same
	 * transaction.
	 * @throws StoreAway if that comes so late that it is being deleted
	 */
	public void take(String object) {
		if (this.jdbc.sql("delete from unnamed_object where object = ?").param(object).update() != 1) {
			throw new StoreAway("A picture was recorded too late: its object is gone");
		}
	}

	/**
	 * Notes the objects of a photo as to be deleted, by the transaction that erases it.
	 */
	public void leaveAllOf(UUID photo) {
		this.jdbc.sql("""
				insert into unnamed_object (object, why, due_at, since)
				select object, 'erased', :now, :now from photo_body where photo = :photo and object is not null""")
			.param("photo", photo)
			.param("now", SqlTime.of(this.clock.now()))
			.update();
	}

	/**
	 * Notes an object as to be deleted, if a picture names it, by the transaction that
	 * moves the picture.
	 * @return how many do: 0 or 1
	 */
	int leave(String object) {
		return this.jdbc.sql("""
				insert into unnamed_object (object, why, due_at, since)
				select object, 'moved', :now, :now from photo_body where object = :object""")
			.param("object", object)
			.param("now", SqlTime.of(this.clock.now()))
			.update();
	}

	/**
	 * The picture of an object, if it is there and the one that was put.
	 * @throws StoreAway if that can't be told
	 */
	public Optional<byte[]> find(String object, byte[] salt, byte[] digest) {
		return there().find(object).filter((jpeg) -> MessageDigest.isEqual(digest(salt, jpeg), digest));
	}

	/** Whether a picture names the object now, whatever the caller's transaction sees. */
	public boolean isNamed(String object) {
		return Boolean.TRUE.equals(
				this.apart.execute((status) -> this.jdbc.sql("select exists (select from photo_body where object = ?)")
					.param(object)
					.query(Boolean.class)
					.single()));
	}

	/** The SHA-256 of salt and picture. */
	public static byte[] digest(byte[] salt, byte[] jpeg) {
		MessageDigest digest = sha256();
		digest.update(salt);
		return digest.digest(jpeg);
	}

	public static MessageDigest sha256() {
		try {
			return MessageDigest.getInstance("SHA-256");
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

	private ObjectStore there() {
		if (this.store == null) {
			throw new StoreAway("Pictures stand in an object store, and registry.photos.store.bucket names none");
		}
		return this.store;
	}

}
