package county.bigtree.registry.http;

import org.jspecify.annotations.Nullable;

/**
 * A body that is one page of a list. Where there is a next page its address also goes
 * into the {@code Link} header (RFC 8288).
 */
public interface Paged {

	/** The cursor of the next page, or null on the last one. */
	@Nullable String next();

}
