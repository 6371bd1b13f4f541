/**
 * The pages in a real browser: what people with small screens, dark rooms, keyboards or
 * screen readers get.
 */
@NullMarked
package county.bigtree.registry.browser;

import org.jspecify.annotations.NullMarked;
