package county.bigtree.registry.readcache;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * How much memory a node gives to answers that it keeps.
 *
 * @param size of all answers with their addresses; zero keeps none
 */
@ConfigurationProperties("registry.read-cache")
record ReadCacheSettings(@DefaultValue("16MB") DataSize size) {

	ReadCacheSettings {
		if (size.isNegative()) {
			throw new IllegalArgumentException("registry.read-cache.size must not be negative, and is " + size);
		}
	}

}
