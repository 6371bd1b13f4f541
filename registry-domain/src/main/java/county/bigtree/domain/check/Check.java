package county.bigtree.domain.check;

import java.util.Optional;

/**
 * One rule of plausibility. It is silent where what it needs was not filed or is not
 * known, asks for a second look where something is odd, and never proves a measurement
 * wrong.
 */
interface Check {

	Optional<Finding> look(Filed filed, Known known);

}
