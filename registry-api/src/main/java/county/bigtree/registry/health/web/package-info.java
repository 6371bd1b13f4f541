/**
 * Health, for whoever watches over the service.
 */
@NullMarked
package county.bigtree.registry.health.web;

import org.jspecify.annotations.NullMarked;
