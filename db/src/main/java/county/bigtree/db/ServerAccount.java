package county.bigtree.db;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import com.sun.security.auth.module.UnixSystem;
import org.jspecify.annotations.Nullable;

/**
 * As whom the server's programs run. PostgreSQL refuses to run as root; a service that
 * was started as root therefore runs it in a user namespace without privileges, or, where
 * those are forbidden (as in most containers), as nobody with the one right to pass
 * folders that root has closed.
 */
enum ServerAccount {

	SAME_USER(List.of()), OWN_NAMESPACE(List.of("unshare", "-U")),
	NOBODY(List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups", "--inh-caps=+dac_override",
			"--ambient-caps=+dac_override", "--securebits=+no_setuid_fixup"));

	private static final int ROOT_UID = 0;

	private static final int NOBODY_UID = 65534;

	private final List<String> prefix;

	ServerAccount(List<String> prefix) {
		this.prefix = prefix;
	}

	static ServerAccount find() {
		if (!isRoot()) {
			return SAME_USER;
		}
		for (ServerAccount account : List.of(OWN_NAMESPACE, NOBODY)) {
			if (account.works()) {
				return account;
			}
		}
		throw new DatabaseUnavailable("PostgreSQL refuses to run as root, and neither \"unshare\" nor \"setpriv\" works"
				+ " here: start the service as another user, or name a server of yours with --spring.datasource.url.");
	}

	List<String> command(Path program, List<String> arguments) {
		List<String> command = new ArrayList<>(this.prefix);
		command.add(program.toString());
		command.addAll(arguments);
		return command;
	}

	/**
	 * Hands an existing database folder to this account, which may be another one than at
	 * the last start.
	 */
	void takeOwnership(Path folder) throws IOException {
		if (this == SAME_USER) {
			return;
		}
		Integer wanted = (this == NOBODY) ? NOBODY_UID : ROOT_UID;
		if (wanted.equals(Files.getAttribute(folder, "unix:uid"))) {
			return;
		}
		Files.walkFileTree(folder, new SimpleFileVisitor<>() {
			@Override
			public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
				Files.setAttribute(file, "unix:uid", wanted, LinkOption.NOFOLLOW_LINKS);
				return FileVisitResult.CONTINUE;
			}

			@Override
			public FileVisitResult postVisitDirectory(Path directory, @Nullable IOException ex) throws IOException {
				Files.setAttribute(directory, "unix:uid", wanted, LinkOption.NOFOLLOW_LINKS);
				return FileVisitResult.CONTINUE;
			}
		});
	}

	boolean works() {
		try {
			ProgramRun run = ProgramRun.of(command(Path.of("id"), List.of("-u")));
			return run.succeeded() && !run.output().strip().equals("0");
		}
		catch (IOException ex) {
			return false;
		}
	}

	private static boolean isRoot() {
		boolean windows = System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows");
		return !windows && new UnixSystem().getUid() == ROOT_UID;
	}

}
