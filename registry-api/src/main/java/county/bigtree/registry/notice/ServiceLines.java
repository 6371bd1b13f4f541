package county.bigtree.registry.notice;

import java.util.List;

/**
 * What is told to administrators of the service as a whole.
 */
public interface ServiceLines {

	/** How it was kept, in a line each, as it stands when it is asked. */
	List<String> ofTheWeek();

}
