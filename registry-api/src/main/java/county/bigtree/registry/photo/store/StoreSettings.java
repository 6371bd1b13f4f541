package county.bigtree.registry.photo.store;

import java.net.URI;

import org.jspecify.annotations.Nullable;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * An object store that is asked as Amazon S3 is.
 *
 * @param bucket which is there already and that nobody reads but the register; without
 * one all pictures stand in the database
 * @param endpoint the address of the store; null for that of Amazon in the region
 * @param region as the store calls it
 * @param prefix of the names of all objects, such as {@code larkmere/}
 * @param accessKey who asks
 * @param secretKey by what requests are signed
 * @param takesNew whether the pictures of new photos go there; if not, only those that
 * are there already are read
 */
@ConfigurationProperties("registry.photos.store")
record StoreSettings(@Nullable String bucket, @Nullable URI endpoint, @DefaultValue("us-east-1") String region,
		@DefaultValue("") String prefix, @Nullable String accessKey, @Nullable String secretKey,
		@DefaultValue("true") boolean takesNew) {

	/** Keys stand in no log. */
	@Override
	public String toString() {
		return "StoreSettings[bucket=%s, endpoint=%s, region=%s, prefix=%s]".formatted(this.bucket, this.endpoint,
				this.region, this.prefix);
	}

}
