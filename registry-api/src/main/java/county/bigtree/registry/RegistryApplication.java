package county.bigtree.registry;

import county.bigtree.registry.command.CommandLine;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/**
 * The county big-tree registry as one runnable service.
 */
@SpringBootApplication
public class RegistryApplication {

	/**
	 * Serves, or runs the command that the first argument names.
	 */
	public static void main(String[] args) {
		SecretsInArguments.warning(args).ifPresent(System.err::println);
		if (CommandLine.asksFor(args)) {
			System.exit(new CommandLine(RegistryApplication.class).run(args));
		}
		SpringApplication.run(RegistryApplication.class, args);
	}

}
