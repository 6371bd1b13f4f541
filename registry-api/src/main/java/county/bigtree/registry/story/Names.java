package county.bigtree.registry.story;

import java.util.HashMap;
import java.util.Map;

import county.bigtree.registry.species.SpeciesCatalogue;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The names by which species and counties are called in sentences.
 */
@Component
class Names {

	private final SpeciesCatalogue catalogue;

	private final JdbcClient jdbc;

	Names(SpeciesCatalogue catalogue, JdbcClient jdbc) {
		this.catalogue = catalogue;
		this.jdbc = jdbc;
	}

	/**
	 * The names for one story; each is looked up once.
	 */
	Known forOneStory() {
		return new Known(this);
	}

	private String county(String key) {
		return this.jdbc.sql("select name from county_now where key = ?").param(key).query(String.class).single();
	}

	/**
	 * The names met so far.
	 */
	static final class Known {

		private final Names names;

		private final Map<String, String> species = new HashMap<>();

		private final Map<String, String> counties = new HashMap<>();

		private Known(Names names) {
			this.names = names;
		}

		String species(String key) {
			return this.species.computeIfAbsent(key, (unknown) -> this.names.catalogue.get(unknown).commonName());
		}

		String county(String key) {
			return this.counties.computeIfAbsent(key, this.names::county);
		}

	}

}
