package county.bigtree.registry.http;

/**
 * An argument of a controller that reads the parameters of a form, and drops what can't
 * be kept.
 */
public interface ReadsItself {

}
