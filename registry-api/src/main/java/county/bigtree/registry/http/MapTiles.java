package county.bigtree.registry.http;

import java.net.URI;

import org.jspecify.annotations.Nullable;

import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/**
 * The server of map tiles that {@code registry.map.tiles.url} names, such as
 * {@code https://tiles.example.org/{z}/{x}/{y}.png}, and the words by which
 * {@code registry.map.tiles.attribution} credits whose map it is. There is none unless
 * both are set; the maps do without. Only browsers that open a map ask it, which tells it
 * where they look.
 */
@Component
public class MapTiles {

	private final @Nullable String url;

	private final @Nullable String attribution;

	MapTiles(Environment environment) {
		this.url = given(environment, "registry.map.tiles.url");
		this.attribution = given(environment, "registry.map.tiles.attribution");
		if (this.url != null) {
			check(this.url);
			if (this.attribution == null) {
				throw new IllegalArgumentException(
						"registry.map.tiles.attribution must credit the map of registry.map.tiles.url");
			}
		}
	}

	private static @Nullable String given(Environment environment, String property) {
		String given = environment.getProperty(property);
		return (given == null || given.isBlank()) ? null : given.strip();
	}

	private static void check(String url) {
		boolean complete = url.contains("{z}") && url.contains("{x}") && url.contains("{y}");
		if (!complete || !url.matches("https?://[A-Za-z0-9.-]+(:\\d+)?/[^\\s;,'\"]*")) {
			throw new IllegalArgumentException(
					"registry.map.tiles.url must be like https://tiles.example.org/{z}/{x}/{y}.png, not " + url);
		}
	}

	/** The address of a tile with its places for z, x and y; null where there is none. */
	public @Nullable String url() {
		return this.url;
	}

	public @Nullable String attribution() {
		return (this.url != null) ? this.attribution : null;
	}

	/** From where pages take pictures beside their own; null for nowhere. */
	public @Nullable String origin() {
		if (this.url == null) {
			return null;
		}
		URI address = URI.create(this.url.replace("{", "").replace("}", ""));
		return address.getScheme() + "://" + address.getAuthority();
	}

}
