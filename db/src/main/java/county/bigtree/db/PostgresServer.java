package county.bigtree.db;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * One PostgreSQL cluster in a folder, worked through PostgreSQL's own programs. Knows
 * nothing of who owns it.
 *
 * @param binaries folder with {@code bin/initdb}, {@code bin/pg_ctl} and
 * {@code bin/postgres}
 * @param data the cluster's folder
 * @param log where the server writes what it has to say; appended to
 */
record PostgresServer(Path binaries, ServerAccount account, Path data, Path log) {

	static final String SUPERUSER = "postgres";

	/** Seconds; recovery after a crash may have to replay much. */
	private static final String START_PATIENCE = "300";

	private static final String STOP_PATIENCE = "120";

	/**
	 * Creates the cluster. The builtin locale keeps the order of texts, and with it the
	 * indexes, the same on every machine and after every update of the operating system.
	 */
	void create(Path superuserPassword) throws IOException {
		ProgramRun run = run("initdb", "--pgdata=" + this.data, "--username=" + SUPERUSER,
				"--pwfile=" + superuserPassword, "--auth=scram-sha-256", "--encoding=UTF8", "--locale-provider=builtin",
				"--builtin-locale=C.UTF-8", "--locale=C");
		if (!run.succeeded()) {
			throw new ServerRefusal(run.output());
		}
	}

	boolean exists() {
		return Files.exists(this.data.resolve("PG_VERSION"));
	}

	/**
	 * Starts the server and waits until it accepts connections.
	 * @throws ServerRefusal if it does not come up, with what it said
	 */
	void start(int port, Map<String, String> durability) throws IOException {
		this.account.takeOwnership(this.data);
		ServerSettings.write(this.data, port, durability);
		long alreadySaid = Files.exists(this.log) ? Files.size(this.log) : 0;
		ProgramRun run = run("pg_ctl", "start", "--wait", "--silent", "--timeout=" + START_PATIENCE,
				"--pgdata=" + this.data, "--log=" + this.log);
		if (!run.succeeded()) {
			throw new ServerRefusal(saidSince(alreadySaid) + run.output());
		}
	}

	/**
	 * Stops the server with a checkpoint, ending its sessions; fine if none runs.
	 */
	void stop() throws IOException {
		ProgramRun run = run("pg_ctl", "stop", "--wait", "--silent", "--mode=fast", "--timeout=" + STOP_PATIENCE,
				"--pgdata=" + this.data);
		if (!run.succeeded() && Files.exists(this.data.resolve("postmaster.pid"))) {
			throw new ServerRefusal(run.output());
		}
	}

	private ProgramRun run(String program, String... arguments) throws IOException {
		return ProgramRun.of(this.account.command(this.binaries.resolve("bin").resolve(program), List.of(arguments)));
	}

	private String saidSince(long position) throws IOException {
		if (!Files.exists(this.log)) {
			return "";
		}
		byte[] all = Files.readAllBytes(this.log);
		int from = (int) Math.min(position, all.length);
		return new String(all, from, all.length - from, StandardCharsets.UTF_8);
	}

}
