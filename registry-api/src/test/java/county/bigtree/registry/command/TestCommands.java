package county.bigtree.registry.command;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import county.bigtree.registry.RegistryApplication;
import org.slf4j.LoggerFactory;

/**
 * Runs commands in the process of the tests, which log on as they did before.
 */
public final class TestCommands {

	private TestCommands() {
	}

	/** The exit code of the command that the words say. */
	public static int run(String... words) {
		Level level = root().getLevel();
		try {
			return new CommandLine(RegistryApplication.class).run(words);
		}
		finally {
			root().setLevel(level);
		}
	}

	private static Logger root() {
		return (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
	}

}
