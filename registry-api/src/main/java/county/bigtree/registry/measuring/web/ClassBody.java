package county.bigtree.registry.measuring.web;

import java.util.List;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * What several groups read of one tree.
 *
 * @param groups from 2 to 100
 */
record ClassBody(@NotNull @Size(min = 2, max = 100) List<@Valid GroupBody> groups) {

	/** One group's readings: as many of the three figures as it took. */
	record GroupBody(@NotBlank @Size(max = 100) String group, @Nullable GirthReading girth,
			@Nullable HeightReading height, @Nullable CrownReading crown) {
	}

}
