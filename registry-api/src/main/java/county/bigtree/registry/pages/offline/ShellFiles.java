package county.bigtree.registry.pages.offline;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import io.swagger.v3.oas.annotations.Hidden;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.context.MessageSource;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * What a browser asks for to install the register and to keep its pages: the manifest
 * (W3C Web Application Manifest) and the worker (W3C Service Workers), which is another
 * one with each release.
 */
@RestController
@Hidden
class ShellFiles {

	private static final MediaType MANIFEST = MediaType.parseMediaType("application/manifest+json");

	private static final MediaType SCRIPT = new MediaType("text", "javascript", StandardCharsets.UTF_8);

	private final ShellVersion version;

	private final MessageSource messages;

	private final JsonMapper json;

	ShellFiles(ShellVersion version, MessageSource messages, JsonMapper json) {
		this.version = version;
		this.messages = messages;
		this.json = json;
	}

	@GetMapping("/service-worker.js")
	@Access(Who.ANYONE)
	ResponseEntity<String> worker() throws IOException {
		String script = new ClassPathResource("offline/service-worker.js").getContentAsString(StandardCharsets.UTF_8)
			.replace("'VERSION'", this.json.writeValueAsString(this.version.toString()))
			.replace("['FILES']", this.json.writeValueAsString(this.version.addresses()));
		return ResponseEntity.ok().cacheControl(CacheControl.noCache()).contentType(SCRIPT).body(script);
	}

	@GetMapping("/manifest.webmanifest")
	@Access(Who.ANYONE)
	ResponseEntity<String> manifest(Locale locale) {
		Map<String, Object> manifest = Map.of("id", "/", "name", say("site.name", locale), "short_name",
				say("offline.short-name", locale), "description", say("offline.description", locale), "lang",
				locale.getLanguage(), "start_url", "/offline", "scope", "/", "display", "standalone", "icons",
				List.of(icon("/style/mark.svg", "any", "image/svg+xml", "any"),
						icon("/style/icon-192.png", "192x192", "image/png", "any"),
						icon("/style/icon-512.png", "512x512", "image/png", "any"),
						icon("/style/icon-maskable.png", "512x512", "image/png", "maskable")));
		return ResponseEntity.ok()
			.cacheControl(CacheControl.noCache())
			.contentType(MANIFEST)
			.body(this.json.writeValueAsString(manifest));
	}

	private String say(String key, Locale locale) {
		return this.messages.getMessage(key, null, locale);
	}

	/** By the addresses of this release. */
	private Map<String, String> icon(String file, String sizes, String type, String purpose) {
		return Map.of("src", this.version.path() + file, "sizes", sizes, "type", type, "purpose", purpose);
	}

}
