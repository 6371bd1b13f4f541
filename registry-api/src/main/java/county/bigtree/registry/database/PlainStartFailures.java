package county.bigtree.registry.database;

import county.bigtree.db.DatabaseUnavailable;
import org.jspecify.annotations.Nullable;

import org.springframework.boot.SpringBootExceptionReporter;
import org.springframework.boot.web.server.PortInUseException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;

/**
 * Prints why the service did not start as one plain line, where it is something that the
 * person who starts it can mend. The process ends with exit code 1.
 */
@Order(Ordered.HIGHEST_PRECEDENCE)
class PlainStartFailures implements SpringBootExceptionReporter {

	@Override
	public boolean reportException(Throwable failure) {
		for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
			String sentence = sentence(cause);
			if (sentence != null) {
				System.err.println(sentence);
				return true;
			}
		}
		return false;
	}

	private static @Nullable String sentence(Throwable cause) {
		if (cause instanceof DatabaseUnavailable || cause instanceof NotMigrated) {
			return cause.getMessage();
		}
		if (cause instanceof PortInUseException port) {
			return "Port " + port.getPort() + " is taken by another program: stop that one, or give another port with"
					+ " --server.port.";
		}
		return null;
	}

}
