package county.bigtree.domain.classroom;

/**
 * Why a group's figure may be off: a guess to start the talk with, never a verdict.
 *
 * @param code stable, for programs
 * @param detail a sentence for the class
 */
public record LikelyReason(String code, String detail) {
}
