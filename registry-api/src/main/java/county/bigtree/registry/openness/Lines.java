package county.bigtree.registry.openness;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;

/**
 * Text written piece by piece, from within what may not throw checked exceptions.
 */
final class Lines {

	private final Writer to;

	Lines(Writer to) {
		this.to = to;
	}

	Lines add(Object text) {
		try {
			this.to.write(text.toString());
			return this;
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
