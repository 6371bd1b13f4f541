package county.bigtree.registry.http;

import java.util.Optional;

import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;

/**
 * Which page of a list is asked for. A controller takes it as an argument.
 *
 * @param limit items wanted, 1 to {@value #MOST}; {@value #BY_DEFAULT} where none is
 * given
 * @param cursor where to begin, or null for the beginning
 */
@ParameterObject
public record Paging(
		@Parameter(description = "How many are wanted at most",
				schema = @Schema(type = "integer", minimum = "1", maximum = "500", defaultValue = "50")) int limit,
		@Parameter(description = "The next of the page before; left out for the first page") @Nullable String cursor) {

	public static final int BY_DEFAULT = 50;

	public static final int MOST = 500;

	public Paging {
		if (limit < 1 || limit > MOST) {
			throw new IllegalArgumentException("limit must be from 1 to " + MOST + " but was " + limit);
		}
	}

	/** One more than the limit: how many rows to fetch to know whether there are more. */
	public int oneMore() {
		return this.limit + 1;
	}

	/** The cursor, which must have been given out for this list. */
	public Optional<Cursor> cursor(String list, int parts) {
		return Optional.ofNullable(this.cursor).map((text) -> Cursor.parse(list, parts, text));
	}

}
