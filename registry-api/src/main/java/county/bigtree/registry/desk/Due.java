package county.bigtree.registry.desk;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.UUID;

import county.bigtree.domain.standing.Title;
import org.jspecify.annotations.Nullable;

/**
 * A tree that is to be measured again.
 *
 * @param rank its rank among the trees of its species in the county
 * @param title what it holds, or null
 * @param dueOn the last day on which its figures do: that of its days of grace if it is
 * damaged, else the last on which its measurement is current
 */
public record Due(UUID tree, String tag, String species, int rank, @Nullable Title title, LocalDate measuredOn,
		LocalDate dueOn, Why why) {

	/**
	 * Damaged trees first, then by day.
	 */
	public static final Comparator<Due> ORDER = Comparator.comparing(Due::why)
		.thenComparing(Due::dueOn)
		.thenComparing(Due::tag);

	/**
	 * Why a tree is due, what is more urgent first.
	 */
	public enum Why {

		DAMAGED, STALE;

		public String word() {
			return (this == DAMAGED) ? "damaged" : "stale";
		}

	}

}
