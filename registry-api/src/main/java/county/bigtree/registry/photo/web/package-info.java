/**
 * Photos over HTTP.
 */
@NullMarked
package county.bigtree.registry.photo.web;

import org.jspecify.annotations.NullMarked;
