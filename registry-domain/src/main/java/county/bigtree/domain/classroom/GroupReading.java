package county.bigtree.domain.classroom;

import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * What one group read.
 *
 * @param group its name, not blank
 */
public record GroupReading(String group, Reading reading) {

	public GroupReading {
		if (group.isBlank()) {
			throw new InvalidReadingException("group", Flaw.MISSING, "must name the group");
		}
	}

}
