package county.bigtree.registry.records;

import java.time.Instant;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/**
 * What is on record about a subject, as far as whoever asked may see it.
 *
 * @param of the subject
 * @param madeFor the credit name of who asked, or null for anyone
 * @param files their contents by their path in the folder
 * @param withheld what is not in it
 */
public record Folder(String of, Instant madeAt, @Nullable String madeFor, Map<String, Object> files,
		List<Withheld> withheld) {

	/**
	 * Something that was left out.
	 *
	 * @param what a kind of thing; told whether or not there are any
	 * @param why who may see it, or that there is too much
	 */
	public record Withheld(String what, String why) {

	}

}
