package county.bigtree.registry.access;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Declares who may call an endpoint; one without it can't be called at all. Where the
 * path names a {@code {county}}, a role is judged in that county; elsewhere a role in any
 * county lets the call through, and the use case judges the county once it knows it.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Access {

	Who value();

	/**
	 * Whether it is about the account itself, so that no token will do that is good for
	 * less than everything.
	 */
	boolean account() default false;

}
