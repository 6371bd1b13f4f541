package county.bigtree.registry.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * The demo's files, in the jar.
 */
final class DemoFiles {

	private DemoFiles() {
	}

	static String text(String file) {
		return new String(bytes(file), StandardCharsets.UTF_8);
	}

	static byte[] bytes(String file) {
		try (InputStream stream = DemoFiles.class.getResourceAsStream("/demo/" + file)) {
			if (stream == null) {
				throw new IllegalStateException("The demo's file " + file + " is missing from the jar");
			}
			return stream.readAllBytes();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
