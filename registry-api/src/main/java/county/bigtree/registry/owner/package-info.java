/**
 * Owners of trees and what they consent to.
 */
@NullMarked
package county.bigtree.registry.owner;

import org.jspecify.annotations.NullMarked;
