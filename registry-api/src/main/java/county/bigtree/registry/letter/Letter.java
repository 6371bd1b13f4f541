package county.bigtree.registry.letter;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import org.jspecify.annotations.Nullable;

/**
 * A letter and, once told, what became of it.
 *
 * @param text null where the words were erased
 * @param contact told only where the one letter is opened, and that is noted
 * @param answerBy the day by which the writer is to have an answer
 * @param overdue whether that day is past and nothing became of the letter yet
 * @param became nothing, answer, nomination, report, visit or correction; null while it
 * waits
 * @param correctedTree the tree that was corrected
 * @param decidedBy who told it
 */
public record Letter(UUID id, String county, String about, @Nullable UUID tree, @Nullable String tag,
		Instant recordedAt, @Nullable String text, @Nullable String contact, @Nullable UUID writtenBy,
		LocalDate answerBy, boolean overdue, @Nullable String became, @Nullable UUID nomination,
		@Nullable UUID conditionReport, @Nullable UUID visit, @Nullable UUID correctedTree, @Nullable String answer,
		@Nullable Instant decidedAt, @Nullable UUID decidedBy) {

	/** Whether nothing became of it yet. */
	@JsonIgnore
	public boolean isOpen() {
		return this.became == null;
	}

	Letter withoutContact() {
		return new Letter(this.id, this.county, this.about, this.tree, this.tag, this.recordedAt, this.text, null,
				this.writtenBy, this.answerBy, this.overdue, this.became, this.nomination, this.conditionReport,
				this.visit, this.correctedTree, this.answer, this.decidedAt, this.decidedBy);
	}

}
