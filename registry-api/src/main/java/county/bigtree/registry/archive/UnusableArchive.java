package county.bigtree.registry.archive;

import org.jspecify.annotations.Nullable;

/**
 * Why an archive can't be written or restored, in a sentence for whoever asked for it.
 * Nothing was changed.
 */
public final class UnusableArchive extends RuntimeException {

	private static final long serialVersionUID = 1L;

	UnusableArchive(String sentence) {
		super(sentence);
	}

	UnusableArchive(String sentence, @Nullable Throwable cause) {
		super(sentence, cause);
	}

}
