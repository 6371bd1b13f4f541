package county.bigtree.registry.people;

/**
 * Who asks by a token, and what it is good for.
 *
 * @param actor its owner, with no roles beyond the scope
 */
public record TokenHolder(Actor actor, TokenScope scope) {

}
