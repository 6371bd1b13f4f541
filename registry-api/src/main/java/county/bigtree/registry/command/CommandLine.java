package county.bigtree.registry.command;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

import county.bigtree.db.RunningDatabase;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * Runs a command on the register that the options name, without serving.
 */
public final class CommandLine {

	private static final Logger logger = LoggerFactory.getLogger(CommandLine.class);

	private static final Set<String> WORDS = new TreeSet<>(Set.of("verify", "recompute", "reduce",
			"invite-administrator", "reset-password", "archive", "restore", "erasures", "erase-again", "move-photos"));

	/** What is done at the console while the register is served. */
	private static final Set<String> WHILE_SERVING = Set.of("invite-administrator", "reset-password", "archive",
			"erasures", "move-photos");

	/** What takes the schema as it finds it. */
	private static final Set<String> WITHOUT_MIGRATING = Set.of("archive", "restore");

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
		try (ConfigurableApplicationContext context = start(word, Arrays.copyOfRange(arguments, 1, arguments.length))) {
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
	private @Nullable ConfigurableApplicationContext start(String word, String[] options) {
		try {
			Map<String, Object> properties = new HashMap<>(WHILE_SERVING.contains(word) ? serving(options) : Map.of());
			properties.put("registry.migrate-at-start", !WITHOUT_MIGRATING.contains(word));
			properties.put("registry.database-as-written", word.equals("archive"));
			return application(properties).run(taking(word, options));
		}
		catch (RuntimeException ex) {
			logger.debug("The register could not be opened", ex);
			return null;
		}
	}

	/** Where the schema is taken as it is found, nothing may want another one. */
	private static String[] taking(String word, String[] options) {
		if (!WITHOUT_MIGRATING.contains(word)) {
			return options;
		}
		String[] taken = Arrays.copyOf(options, options.length + 1);
		taken[options.length] = "--spring.jpa.hibernate.ddl-auto=none";
		return taken;
	}

	/**
	 * How to get at the database of a register that is being served from here with its
	 * own; nothing where that is not so.
	 */
	private static Map<String, Object> serving(String[] options) {
		DefaultApplicationArguments given = new DefaultApplicationArguments(options);
		if (given.containsOption("spring.datasource.url") || System.getenv("SPRING_DATASOURCE_URL") != null) {
			return Map.of();
		}
		List<String> folders = given.getOptionValues("registry.data-folder");
		String folder = (folders != null && !folders.isEmpty()) ? folders.get(0)
				: System.getenv().getOrDefault("REGISTRY_DATA_FOLDER", "./registry-data");
		return RunningDatabase.find(Path.of(folder))
			.map((login) -> Map.<String, Object>of("spring.datasource.url", login.jdbcUrl(),
					"spring.datasource.username", login.user(), "spring.datasource.password", login.password(),
					"spring.flyway.enabled", "false"))
			.orElse(Map.of());
	}

	/**
	 * The service's own parts, of which only those that the command needs are made.
	 */
	private SpringApplication application(Map<String, Object> properties) {
		SpringApplication springApplication = new SpringApplication(this.application);
		springApplication.setWebApplicationType(WebApplicationType.NONE);
		springApplication.setLazyInitialization(true);
		properties.put("logging.level.root", "warn");
		properties.put("management.tracing.export.enabled", false);
		springApplication.setDefaultProperties(properties);
		return springApplication;
	}

}
