package county.bigtree.registry.pages.offline;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;

/**
 * Which release of the pages this is, by the content of their scripts, style, templates
 * and words: nodes of one release agree on it. Scripts and style have it in their
 * address, so that a page never meets those of another release.
 */
@Component
class ShellVersion {

	/** Addresses that hold a version. */
	static final String PATTERN = "/v[0-9a-f]{12}/.*";

	private static final int DIGITS = 12;

	private static final List<String> FILES = List.of("script/*.js", "style/*");

	private static final List<String> WORDS = List.of("templates/**/*.html", "messages.properties",
			"offline/service-worker.js");

	private final String digits;

	private final List<String> files;

	ShellVersion() throws IOException {
		List<Part> files = parts(FILES.stream().map((pattern) -> "static/" + pattern));
		this.files = files.stream().map((part) -> part.path().substring("static".length())).toList();
		this.digits = digest(Stream.concat(files.stream(), parts(WORDS.stream()).stream()).toList());
	}

	/** With which versioned addresses begin: {@code /v} and twelve hexadecimal digits. */
	String path() {
		return "/v" + this.digits;
	}

	/** Scripts and style, by the addresses at which pages find them. */
	List<String> addresses() {
		return this.files.stream().map((file) -> path() + file).toList();
	}

	/** Whether an address of ours has the version in front. */
	static boolean isOfShell(String address) {
		return address.startsWith("/script/") || address.startsWith("/style/");
	}

	@Override
	public String toString() {
		return this.digits;
	}

	private static List<Part> parts(Stream<String> patterns) throws IOException {
		var resolver = new PathMatchingResourcePatternResolver();
		Stream.Builder<Part> parts = Stream.builder();
		for (String pattern : patterns.toList()) {
			for (Resource resource : resolver.getResources("classpath:" + pattern)) {
				try (InputStream in = resource.getInputStream()) {
					parts.add(new Part(path(resource, pattern), in.readAllBytes()));
				}
			}
		}
		return parts.build().sorted(Comparator.comparing(Part::path)).toList();
	}

	/** From the folder on with which the pattern begins. */
	private static String path(Resource resource, String pattern) throws IOException {
		String address = resource.getURL().getPath();
		String folder = pattern.contains("/") ? pattern.substring(0, pattern.indexOf('/') + 1)
				: Objects.requireNonNull(resource.getFilename());
		return address.substring(address.lastIndexOf("/" + folder) + 1);
	}

	private static String digest(List<Part> parts) {
		try {
			MessageDigest digest = MessageDigest.getInstance("SHA-256");
			parts.forEach((part) -> digest.update(part.bytes()));
			return HexFormat.of().formatHex(Arrays.copyOf(digest.digest(), DIGITS / 2));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private record Part(String path, byte[] bytes) {
	}

}
