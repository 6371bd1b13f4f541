package county.bigtree.registry.photo.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.photo.Photo;
import county.bigtree.registry.photo.ShowPhotos;
import org.jspecify.annotations.Nullable;

/**
 * A photo in answers.
 *
 * @param tree the tree it shows; null to who sent it, once that tree is shown to nobody
 * @param measurement the measurement it belongs to; for those involved, and for all once
 * that counts
 * @param text what there is to see, for those who can't see it
 * @param credit the name under which it is shown
 * @param status waiting, passed, refused or withdrawn
 * @param published whether everybody may see it today
 * @param by who sent it, for verifiers
 * @param reason of the latest decision, for verifiers and who sent it
 * @param images the same picture in the sizes that are kept, the narrowest first
 */
record PhotoJson(UUID id, @Nullable UUID tree, @Nullable String tag, @Nullable UUID measurement, String shows,
		@Nullable LocalDate takenOn, @Nullable String text, @Nullable String credit, String status, boolean published,
		Instant recordedAt, @Nullable String by, @Nullable String reason, List<ImageJson> images,
		@JsonIgnore long revision) implements Revisioned {

	static PhotoJson from(ShowPhotos.Seen seen) {
		Photo photo = seen.photo();
		boolean told = seen.insider() || photo.listed();
		boolean measured = seen.involved() || photo.measurementCounts();
		return new PhotoJson(photo.id(), told ? photo.tree() : null, told ? photo.tag() : null,
				measured ? photo.measurement() : null, photo.shows().word(), photo.takenOn(), photo.words(),
				photo.credit(), photo.status(), photo.published(), photo.recordedAt(),
				seen.insider() ? photo.byName() : null, seen.involved() ? photo.reason() : null,
				photo.sizes().stream().map((size) -> ImageJson.from(photo, size)).toList(), photo.revision());
	}

	/**
	 * A picture of a photo.
	 *
	 * @param width in pixels
	 * @param height in pixels
	 * @param address where it is, as JPEG
	 */
	record ImageJson(int width, int height, String address) {

		static ImageJson from(Photo photo, Photo.Size size) {
			return new ImageJson(size.width(), size.height(), photo.address(size));
		}

	}

}
