package county.bigtree.registry.photo.store;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;

/**
 * S3Proxy in a process of its own, which checks signatures and keeps each object as a
 * file.
 */
final class TestObjectStore {

	static final String SECRET = "no-real-secret-kestrel";

	static final String PREFIX = "register/";

	private static final String BUCKET = "larkmere-photos";

	/** Written by the build. */
	private static final Path LIBRARIES = Path.of("target/test-object-store.classpath");

	private final Path folder;

	private final int port;

	private @Nullable Process process;

	private TestObjectStore(Path folder, int port) {
		this.folder = folder;
		this.port = port;
	}

	static TestObjectStore begin() {
		try {
			Path folder = Files.createTempDirectory("objects");
			Files.createDirectories(folder.resolve("data").resolve(BUCKET));
			TestObjectStore store = new TestObjectStore(folder, freePort());
			Runtime.getRuntime().addShutdownHook(new Thread(store::stop));
			store.start();
			return store;
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static int freePort() throws IOException {
		try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
			return free.getLocalPort();
		}
	}

	void start() throws IOException {
		Path settings = this.folder.resolve("store.properties");
		Files.writeString(settings, """
				s3proxy.endpoint=http://127.0.0.1:%d
				s3proxy.authorization=aws-v2-or-v4
				s3proxy.identity=register
				s3proxy.credential=%s
				jclouds.provider=filesystem-nio2
				jclouds.identity=none
				jclouds.credential=none
				jclouds.filesystem.basedir=%s
				""".formatted(this.port, SECRET, this.folder.resolve("data")));
		this.process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
				"-Xmx128m", "-cp", Files.readString(LIBRARIES).strip(), "org.gaul.s3proxy.Main", "--properties",
				settings.toString())
			.redirectErrorStream(true)
			.redirectOutput(this.folder.resolve("store.log").toFile())
			.start();
		long begin = System.nanoTime();
		while (!answers()) {
			if (!this.process.isAlive() || System.nanoTime() - begin > TimeUnit.MINUTES.toNanos(2)) {
				throw new IOException(
						"The object store did not start: " + Files.readString(this.folder.resolve("store.log")));
			}
			pause();
		}
	}

	void stop() {
		Process running = this.process;
		if (running != null) {
			running.destroyForcibly().onExit().join();
		}
	}

	private boolean answers() {
		try (Socket socket = new Socket()) {
			socket.connect(new InetSocketAddress("127.0.0.1", this.port), 1000);
			return true;
		}
		catch (IOException ex) {
			return false;
		}
	}

	private static void pause() {
		try {
			Thread.sleep(100);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
	}

	Map<String, String> settings() {
		return Map.of("registry.photos.store.endpoint", "http://127.0.0.1:" + this.port, "registry.photos.store.bucket",
				BUCKET, "registry.photos.store.prefix", PREFIX, "registry.photos.store.access-key", "register",
				"registry.photos.store.secret-key", SECRET);
	}

	Path file(String object) {
		return this.folder.resolve("data").resolve(BUCKET).resolve("register").resolve(object);
	}

	List<String> objects() throws IOException {
		Path all = file("");
		if (!Files.isDirectory(all)) {
			return List.of();
		}
		try (Stream<Path> files = Files.list(all)) {
			return files.map(Path::toFile)
				.filter(File::isFile)
				.map(File::getName)
				.map(Objects::requireNonNull)
				.sorted()
				.toList();
		}
	}

}
