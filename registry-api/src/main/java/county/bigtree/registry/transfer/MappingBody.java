package county.bigtree.registry.transfer;

import java.util.List;

import com.fasterxml.jackson.annotation.JsonCreator;
import county.bigtree.domain.quantity.KnownDay;
import org.jspecify.annotations.Nullable;

/**
 * What the columns of a file mean, as it is sent with the file.
 *
 * @param dryRun whether to report only, and write nothing
 * @param measuredOn the day, month or year in which rows were measured that name none
 * @param basis the older record, in a few words: the stated basis of every figure
 * @param columns where the entries stand
 * @param visits where several visits stand in one row; then the columns have no figures
 * @param locationAccuracyMetres how well the positions are known
 * @param rowKey the column that tells rows apart; left out, their whole content does. A
 * row with the key of one that was taken earlier adds the figures that are new
 * @param incomplete what becomes of rows that lack figures: {@code reject} them, or
 * {@code keep} them as trees to be measured
 */
public record MappingBody(@Nullable Boolean dryRun, @Nullable KnownDay measuredOn, @Nullable String basis,
		@Nullable Columns columns, @Nullable List<Visit> visits, @Nullable Double locationAccuracyMetres,
		@Nullable String rowKey, @Nullable String incomplete) {

	/**
	 * Where the entries of a row stand.
	 *
	 * @param species a scientific or common name
	 * @param tag the tree's tag in the older record
	 * @param measuredOn the measuring day: {@code 1998-06-14}, {@code 6/14/1998},
	 * {@code June 1998} or {@code 1998}
	 * @param owner who owns the tree, how to reach them, who found it, and notes of
	 * visits: for coordinators only
	 * @param popularName what people call the tree: shown to everybody
	 * @param condition in what condition it was when it was last measured
	 * @param statedPoints the points that the older record states, for comparison
	 */
	public record Columns(@Nullable Source species, @Nullable Source tag, @Nullable Source measuredOn,
			@Nullable Source girth, @Nullable Source height, @Nullable Source crown, @Nullable Source latitude,
			@Nullable Source longitude, @Nullable Source owner, @Nullable Source contact, @Nullable Source finder,
			@Nullable Source visitNotes, @Nullable Source popularName, @Nullable Source condition,
			@Nullable Source statedPoints) {

		static final Columns NONE = new Columns(null, null, null, null, null, null, null, null, null, null, null, null,
				null, null, null);

	}

	/**
	 * Where the entries of one visit stand.
	 */
	public record Visit(@Nullable Source measuredOn, @Nullable Source girth, @Nullable Source height,
			@Nullable Source crown) {
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
