package county.bigtree.registry.transfer;

import java.time.LocalDate;

import com.fasterxml.jackson.annotation.JsonCreator;
import org.jspecify.annotations.Nullable;

/**
 * What the columns of a file mean, as it is sent with the file.
 *
 * @param dryRun whether to report only, and write nothing
 * @param measuredOn the day on which all rows were measured
 * @param basis the older record, in a few words: the stated basis of every figure
 * @param columns where the entries stand
 * @param locationAccuracyMetres how well the positions are known
 * @param rowKey the column that tells rows apart; left out, their whole content does
 */
public record MappingBody(@Nullable Boolean dryRun, @Nullable LocalDate measuredOn, @Nullable String basis,
		@Nullable Columns columns, @Nullable Double locationAccuracyMetres, @Nullable String rowKey) {

	/**
	 * Where the entries of a row stand.
	 *
	 * @param species a scientific or common name
	 * @param tag the tree's tag in the older record
	 * @param owner who owns the tree, how to reach them, and notes of visits: for
	 * coordinators only
	 * @param statedPoints the points that the older record states, for comparison
	 */
	public record Columns(@Nullable Source species, @Nullable Source tag, @Nullable Source girth,
			@Nullable Source height, @Nullable Source crown, @Nullable Source latitude, @Nullable Source longitude,
			@Nullable Source owner, @Nullable Source contact, @Nullable Source visitNotes,
			@Nullable Source statedPoints) {
	}

	/**
	 * A column, or a constant that stands for one. A column that is nothing but that may
	 * be written as its name alone.
	 *
	 * @param method how a girth was read
	 * @param unit of a length
	 */
	public record Source(@Nullable String column, @Nullable String constant, @Nullable String method,
			@Nullable String unit) {

		@JsonCreator(mode = JsonCreator.Mode.PROPERTIES)
		public Source {
		}

		@JsonCreator(mode = JsonCreator.Mode.DELEGATING)
		static Source named(String column) {
			return new Source(column, null, null, null);
		}

	}

}
