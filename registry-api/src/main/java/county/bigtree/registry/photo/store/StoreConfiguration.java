package county.bigtree.registry.photo.store;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * The object store, where a bucket is named.
 */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(StoreSettings.class)
class StoreConfiguration {

	@Bean
	@ConditionalOnProperty("registry.photos.store.bucket")
	ObjectStore objectStore(StoreSettings settings) {
		return ObjectStore.of(settings);
	}

}
