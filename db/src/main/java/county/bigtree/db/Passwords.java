package county.bigtree.db;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Properties;

/**
 * The generated passwords of the embedded server's three roles: hexadecimal, 192 bits
 * each, kept in a file that only its owner may read (mode 0600).
 */
record Passwords(String superuser, String owner, String service) {

	private static final int BYTES = 24;

	static Passwords read(Path file) throws IOException {
		Properties properties = new Properties();
		properties.load(new StringReader(Files.readString(file)));
		return new Passwords(required(properties, "superuser", file), required(properties, "owner", file),
				required(properties, "service", file));
	}

	static Passwords generate() {
		return new Passwords(randomWord(), randomWord(), randomWord());
	}

	void write(Path file) throws IOException {
		Properties properties = new Properties();
		properties.setProperty("superuser", this.superuser);
		properties.setProperty("owner", this.owner);
		properties.setProperty("service", this.service);
		StringWriter text = new StringWriter();
		properties.store(text, "Passwords of the database in this folder. Keep them with its backup.");
		writeSecret(file, text.toString());
	}

	/**
	 * Writes a file of mode 0600 so that it is there whole, also after a crash, or not at
	 * all.
	 */
	static void writeSecret(Path file, String text) throws IOException {
		Path beside = file.resolveSibling(file.getFileName() + ".new");
		Files.deleteIfExists(beside);
		Files.createFile(beside, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
		Files.writeString(beside, text);
		try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
			channel.force(true);
		}
		Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
	}

	@Override
	public String toString() {
		return "Passwords[not shown]";
	}

	private static String required(Properties properties, String role, Path file) {
		String password = properties.getProperty(role);
		if (password == null) {
			throw new DatabaseUnavailable("The file " + file + " lacks the password of \"" + role
					+ "\": put the file back from your backup.");
		}
		return password;
	}

	private static String randomWord() {
		byte[] bytes = new byte[BYTES];
		new SecureRandom().nextBytes(bytes);
		return HexFormat.of().formatHex(bytes);
	}

}
