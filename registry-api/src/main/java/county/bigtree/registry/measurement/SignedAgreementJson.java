package county.bigtree.registry.measurement;

import java.util.List;
import java.util.UUID;

/**
 * How the figures of a measurement stood to those of its check at a sign-off that was not
 * revoked.
 */
public record SignedAgreementJson(UUID signOff, List<FigureAgreementJson> figures) {
}
