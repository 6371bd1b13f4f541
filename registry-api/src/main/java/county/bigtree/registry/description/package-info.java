/**
 * The description of the API for programs (OpenAPI 3.1).
 */
@NullMarked
package county.bigtree.registry.description;

import org.jspecify.annotations.NullMarked;
