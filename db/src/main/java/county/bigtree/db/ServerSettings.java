package county.bigtree.db;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What stands in {@code postgresql.conf} and {@code pg_hba.conf} of a server of ours: it
 * answers on the loopback address only and only to a password, and its log holds no
 * statement and no value of a row, which may be personal.
 */
final class ServerSettings {

	/**
	 * Settings without which an acknowledged write may be lost, with the value each must
	 * have.
	 */
	static final Map<String, String> DURABLE = Map.of("fsync", "on", "synchronous_commit", "on", "full_page_writes",
			"on");

	/** Fast and forgetful: for tests, whose data nobody misses. */
	static final Map<String, String> FORGETFUL = Map.of("fsync", "off", "synchronous_commit", "off", "full_page_writes",
			"off");

	private static final Map<String, String> COMMON = common();

	private ServerSettings() {
	}

	static void write(Path data, int port, Map<String, String> durability) throws IOException {
		Map<String, String> settings = new LinkedHashMap<>(COMMON);
		settings.put("port", Integer.toString(port));
		settings.putAll(durability);
		String lines = settings.entrySet()
			.stream()
			.map((setting) -> setting.getKey() + " = '" + setting.getValue() + "'\n")
			.collect(Collectors.joining());
		Files.writeString(data.resolve("postgresql.conf"),
				"# Written anew at each start: use \"alter system\" for settings of your own.\n" + lines);
		Files.writeString(data.resolve("pg_hba.conf"),
				"# Written anew at each start.\nhost all all 127.0.0.1/32 scram-sha-256\n");
	}

	private static Map<String, String> common() {
		Map<String, String> settings = new LinkedHashMap<>();
		settings.put("listen_addresses", "127.0.0.1");
		settings.put("unix_socket_directories", "");
		settings.put("max_connections", "60");
		settings.put("password_encryption", "scram-sha-256");
		settings.put("timezone", "UTC");
		settings.put("log_timezone", "UTC");
		settings.put("lc_messages", "C");
		settings.put("jit", "off");
		settings.put("log_checkpoints", "off");
		settings.put("log_error_verbosity", "terse");
		settings.put("log_min_error_statement", "panic");
		settings.put("log_parameter_max_length_on_error", "0");
		return settings;
	}

}
