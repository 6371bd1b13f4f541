/**
 * How pages ask the API for whoever looks at them, and forms that lose nothing.
 */
@NullMarked
package county.bigtree.registry.pages.form;

import org.jspecify.annotations.NullMarked;
