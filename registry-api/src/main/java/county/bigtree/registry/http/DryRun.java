package county.bigtree.registry.http;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * On a handler that decides: with {@code ?dryRun=true} it is carried out, what it would
 * change is told, and nothing of it is kept.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface DryRun {

	/** The query parameter that asks for it. */
	String PARAMETER = "dryRun";

}
