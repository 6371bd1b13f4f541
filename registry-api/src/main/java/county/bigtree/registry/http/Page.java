package county.bigtree.registry.http;

import java.util.List;
import java.util.function.Function;

import org.jspecify.annotations.Nullable;

/**
 * One page of a list, in its order.
 *
 * @param items at most as many as were asked for
 * @param next the cursor of the next page, or null on the last one
 */
public record Page<T>(List<T> items, @Nullable String next) implements Paged {

	public Page {
		items = List.copyOf(items);
	}

	/**
	 * Cuts the page from rows of which one more than the limit was fetched, which tells
	 * whether there is a next page.
	 */
	public static <R, T> Page<T> cut(List<R> rows, Paging paging, Function<R, T> item, Function<R, Cursor> cursor) {
		List<R> shown = rows.subList(0, Math.min(rows.size(), paging.limit()));
		boolean more = rows.size() > shown.size();
		return new Page<>(shown.stream().map(item).toList(),
				more ? cursor.apply(shown.get(shown.size() - 1)).text() : null);
	}

	/** A list short enough to be given whole. */
	public static <T> Page<T> whole(List<T> items) {
		return new Page<>(items, null);
	}

}
