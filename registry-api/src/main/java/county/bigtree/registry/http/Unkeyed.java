package county.bigtree.registry.http;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * On a handler of POST that does not heed an {@code Idempotency-Key}: it records nothing,
 * or its answer holds a secret that must not be kept.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Unkeyed {

}
