/**
 * The conventions that every address of the HTTP API keeps: paging, versions, keys of
 * requests, the form of JSON.
 */
@NullMarked
package county.bigtree.registry.http;

import org.jspecify.annotations.NullMarked;
