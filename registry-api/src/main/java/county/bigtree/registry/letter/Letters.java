package county.bigtree.registry.letter;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.opening.Opened;
import county.bigtree.registry.opening.Openings;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes letters in, and shows them to the county's coordinators. A letter is private and
 * changes nothing by itself.
 */
@Service
public class Letters {

	/** Days in which the writer is to have an answer: common practice, no source. */
	static final int ANSWER_DAYS = 30;

	private final Journal journal;

	private final Writing writing;

	private final TreeDirectory trees;

	private final ReadLetters read;

	private final Openings openings;

	Letters(Journal journal, Writing writing, TreeDirectory trees, ReadLetters read, Openings openings) {
		this.journal = journal;
		this.writing = writing;
		this.trees = trees;
		this.read = read;
		this.openings = openings;
	}

	/**
	 * Takes a letter in. Whether there is a tree of the name given is not told.
	 * @param writer who wrote it, if they are signed in
	 */
	@Transactional
	public Received receive(@Nullable Actor writer, String county, LetterBody body) {
		Change change = this.journal.open(county);
		Optional<UUID> tree = Optional.ofNullable(body.tree())
			.flatMap(this.trees::find)
			.filter((found) -> found.county().equals(county))
			.map(TreeDirectory.KnownTree::id);
		String words = (body.tree() == null || tree.isPresent()) ? body.text()
				: body.text() + "\n\n(" + body.tree() + ")";
		UUID id = Uuid7.next();
		LocalDate answerBy = change.today().plusDays(ANSWER_DAYS);
		UUID by = (writer != null) ? writer.id() : null;
		this.writing.facts()
			.append(change, FactTable.LETTER, "id", id, "about", body.about(), "tree", tree.orElse(null), "words",
					this.writing.texts().keepAlways(change, words), "contact",
					this.writing.texts().keep(change, body.contact()), "written_by", by, "answer_by", answerBy);
		this.journal.close(change, "letter-received", by);
		return new Received(id, answerBy);
	}

	/**
	 * The letters to a county, without how to reach who wrote them.
	 * @param open only those of which nothing became yet, or only the others
	 */
	@Transactional(readOnly = true)
	public List<Letter> of(String county, @Nullable Boolean open, UUID after, int limit) {
		return this.read.of(county, open, after, limit).stream().map(Letter::withoutContact).toList();
	}

	/**
	 * A letter, with how to reach who wrote it; that it was opened is noted.
	 */
	@Transactional
	public Letter open(Actor actor, UUID id) {
		Letter letter = get(actor, id);
		this.openings.note(actor, letter.county(), letter.tree(), Opened.LETTER, id);
		return letter;
	}

	/**
	 * The letter with this id, for its county's coordinators.
	 * @throws Problem of not being found
	 */
	Letter get(Actor actor, UUID id) {
		return this.read.find(id)
			.filter((letter) -> actor.isCoordinatorOf(letter.county()))
			.orElseThrow(() -> Problem.notFound("No letter has this id."));
	}

	/**
	 * That a letter has come in.
	 */
	public record Received(UUID id, LocalDate answerBy) {
	}

	/**
	 * What writes.
	 */
	@org.springframework.stereotype.Component
	record Writing(Facts facts, Texts texts) {
	}

}
