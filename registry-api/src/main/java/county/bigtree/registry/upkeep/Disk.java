package county.bigtree.registry.upkeep;

/**
 * A disk on which the register is kept.
 *
 * @param folder that is on it
 * @param freeBytes that the service may use
 * @param percent not free
 * @param full whether that is as much as counts as nearly full
 */
public record Disk(String folder, long bytes, long freeBytes, int percent, boolean full) {
}
