package county.bigtree.registry.photo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A photo on record, as all of it is known to the register today.
 *
 * @param tree the tree that it is a photo of; where that was merged, the one that is kept
 * @param county in which that stands
 * @param measurement the measurement that it belongs to, or null
 * @param measurementCounts whether that counts, so that everybody may know of it
 * @param by who sent it
 * @param byName the name by which they are credited
 * @param words what there is to see
 * @param status waiting, passed, refused or withdrawn
 * @param reason of the latest decision, or null
 * @param listed whether the tree is shown today as itself
 * @param published whether everybody may see the photo today
 * @param sizes the narrowest first
 * @param revision raised by each decision
 */
public record Photo(UUID id, UUID tree, String tag, String county, @Nullable UUID measurement,
		boolean measurementCounts, Shows shows, @Nullable LocalDate takenOn, Instant recordedAt, UUID by, String byName,
		@Nullable String words, @Nullable String credit, String status, @Nullable String reason, boolean listed,
		boolean published, List<Size> sizes, long revision) {

	public Photo {
		sizes = List.copyOf(sizes);
	}

	/** The largest. */
	public Size full() {
		return this.sizes.get(this.sizes.size() - 1);
	}

	/** Where the picture of a size is. */
	public String address(Size size) {
		String address = "/api/v1/photos/" + this.id + "/image";
		return size.equals(full()) ? address : address + "?width=" + size.width();
	}

	/**
	 * The size of a picture that is kept, in pixels.
	 */
	public record Size(int width, int height) {
	}

}
