package county.bigtree.registry.command;

import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * Runs a command on the register that the options name, without serving.
 */
public final class CommandLine {

	private static final Logger logger = LoggerFactory.getLogger(CommandLine.class);

	private static final Set<String> WORDS = new TreeSet<>(Set.of("verify", "recompute", "reduce"));

	private final Class<?> application;

	public CommandLine(Class<?> application) {
		this.application = application;
	}

	/**
	 * Whether the first of the program's arguments is a command's word and not an option.
	 */
	public static boolean asksFor(String[] arguments) {
		return arguments.length > 0 && !arguments[0].startsWith("-");
	}

	/**
	 * Runs the command that the first argument names, with the options that follow.
	 * @return the exit code: 0 if all is well, 1 if something is not, 2 if the command
	 * could not be run
	 */
	public int run(String[] arguments) {
		String word = arguments[0];
		if (!WORDS.contains(word)) {
			System.err
				.println("There is no command \"" + word + "\": the commands are " + String.join(", ", WORDS) + ".");
			return RegisterCommand.FAILED;
		}
		try (ConfigurableApplicationContext context = start(Arrays.copyOfRange(arguments, 1, arguments.length))) {
			return (context != null) ? run(word, context) : RegisterCommand.FAILED;
		}
	}

	private static int run(String word, ConfigurableApplicationContext context) {
		try {
			return context.getBeansOfType(RegisterCommand.class)
				.values()
				.stream()
				.filter((command) -> command.word().equals(word))
				.findFirst()
				.orElseThrow()
				.run(new Report(System.out, System.console() != null));
		}
		catch (RuntimeException ex) {
			logger.error("The command {} ended early", word, ex);
			return RegisterCommand.FAILED;
		}
	}

	/**
	 * The running application; null if it did not start, which has then been said.
	 */
	private @Nullable ConfigurableApplicationContext start(String[] options) {
		try {
			return application().run(options);
		}
		catch (RuntimeException ex) {
			logger.debug("The register could not be opened", ex);
			return null;
		}
	}

	/**
	 * The service's own parts, of which only those that the command needs are made.
	 */
	private SpringApplication application() {
		SpringApplication springApplication = new SpringApplication(this.application);
		springApplication.setWebApplicationType(WebApplicationType.NONE);
		springApplication.setLazyInitialization(true);
		springApplication.setDefaultProperties(Map.of("logging.level.root", "warn"));
		return springApplication;
	}

}
