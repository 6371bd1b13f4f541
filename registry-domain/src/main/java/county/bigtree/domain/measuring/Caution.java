package county.bigtree.domain.measuring;

/**
 * Something that makes a figure less sure than its uncertainty says. A caution never
 * refuses a reading.
 *
 * @param code stable, for programs
 * @param detail a sentence for the measurer
 */
public record Caution(String code, String detail) {
}
