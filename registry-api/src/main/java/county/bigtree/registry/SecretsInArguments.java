package county.bigtree.registry;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Warns of secrets among the program's arguments, which anyone on the machine can read in
 * the list of processes. They belong into the environment
 * ({@code SPRING_DATASOURCE_PASSWORD}) or into files
 * ({@code --spring.config.import=configtree:/run/secrets/}).
 */
final class SecretsInArguments {

	private static final Pattern SECRET = Pattern
		.compile("--([a-zA-Z0-9._-]*(?:password|secret|token|credential)[a-zA-Z0-9._-]*)=.+", Pattern.CASE_INSENSITIVE);

	private SecretsInArguments() {
	}

	/** What is wrong with these arguments, or nothing. The secret is not repeated. */
	static Optional<String> warning(String[] arguments) {
		return Arrays.stream(arguments)
			.map(SECRET::matcher)
			.filter((found) -> found.matches())
			.findFirst()
			.map((found) -> "The option --" + found.group(1) + " is a secret, and others can read the command line: "
					+ "put it into the environment, or into a file named after it in a folder given with "
					+ "--spring.config.import=configtree:FOLDER/.");
	}

}
