package county.bigtree.registry.erasure;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import county.bigtree.registry.erasure.ErasureList.Erased;
import county.bigtree.registry.erasure.ErasureList.What;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.ErasePieces;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.EraseAccount;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.photo.ErasePhotos;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Erases again what had been erased before an earlier archive was restored. What is not
 * there, or is erased already, is passed over, so it can be begun again. Each is recorded
 * as an erasure of today by the administrator who does it.
 */
@Service
public class EraseAgain {

	private final EraseAccount accounts;

	private final ErasePhotos photos;

	private final ErasePieces pieces;

	private final Journal journal;

	private final JdbcClient jdbc;

	private final TransactionTemplate transactions;

	EraseAgain(EraseAccount accounts, ErasePhotos photos, ErasePieces pieces, Journal journal, JdbcClient jdbc,
			TransactionTemplate transactions) {
		this.accounts = accounts;
		this.photos = photos;
		this.pieces = pieces;
		this.journal = journal;
		this.jdbc = jdbc;
		this.transactions = transactions;
	}

	/**
	 * Erases what of the list is there, people first, since their words and photos go
	 * with them.
	 * @return how many things were erased
	 */
	public int erase(List<Erased> erased, Actor administrator) {
		Actor everywhere = new Actor(administrator.id(), administrator.creditName(), true, coordinatorOfAll());
		int done = 0;
		for (UUID person : there(erased, What.PERSON)) {
			this.accounts.erase(person, administrator.id());
			done++;
		}
		for (UUID photo : there(erased, What.PHOTO)) {
			this.photos.erase(everywhere, photo);
			done++;
		}
		return done + eraseWords(there(erased, What.WORDS), administrator.id());
	}

	/** In each county one change. */
	private int eraseWords(List<UUID> words, UUID by) {
		Map<String, List<UUID>> byCounty = words.stream()
			.collect(Collectors.groupingBy((piece) -> this.jdbc.sql("select county from text_piece where id = ?")
				.param(piece)
				.query(String.class)
				.single()));
		byCounty.forEach((county, pieces) -> this.transactions.executeWithoutResult((status) -> {
			Change change = this.journal.open(county);
			this.pieces.erase(change, pieces, by);
			this.journal.close(change, "words-erased", by);
		}));
		return words.size();
	}

	/**
	 * Imports of which rows that were not taken are there again: each is erased by hand.
	 */
	public List<UUID> importsToErase(List<Erased> erased) {
		return there(erased, What.UNTAKEN_ROWS);
	}

	private List<UUID> there(List<Erased> erased, What what) {
		return erased.stream()
			.filter((one) -> one.what() == what)
			.map(Erased::id)
			.filter((id) -> this.jdbc.sql(what.there()).param(id).query(Boolean.class).single())
			.distinct()
			.toList();
	}

	private Map<String, Role> coordinatorOfAll() {
		return this.jdbc.sql("select key from county")
			.query(String.class)
			.list()
			.stream()
			.collect(Collectors.toMap(Function.identity(), (county) -> Role.COORDINATOR));
	}

}
