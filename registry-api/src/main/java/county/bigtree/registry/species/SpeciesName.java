package county.bigtree.registry.species;

/**
 * A name that leads to a species, as written in its source.
 *
 * @param kind {@code accepted}, {@code synonym}, {@code former}, {@code common} or
 * {@code cultivar}
 */
public record SpeciesName(String name, String kind) {

}
