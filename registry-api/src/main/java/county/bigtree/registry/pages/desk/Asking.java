package county.bigtree.registry.pages.desk;

import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import org.jspecify.annotations.Nullable;

import org.springframework.ui.Model;

/**
 * Whoever asks for a page on which something is decided, and what is put on it.
 */
record Asking(Api api, @Nullable Viewer viewer, Units units, Model model) {

	/** Opens the page for the county's coordinators alone. */
	DeskWords open(Desks desks, String county) {
		return desks.openForCoordinator(county, this.viewer, this.units, this.model);
	}

	boolean coordinates(String county) {
		return this.viewer != null && this.viewer.coordinates().contains(county);
	}

}
