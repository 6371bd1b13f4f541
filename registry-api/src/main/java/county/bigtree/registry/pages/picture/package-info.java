/**
 * What the pictures of the pages show and where: geometry in the units of the drawing.
 * The templates draw it as SVG, with the same facts in a table beside it.
 */
@NullMarked
package county.bigtree.registry.pages.picture;

import org.jspecify.annotations.NullMarked;
