package county.bigtree.registry.pages;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.registry.photo.Photo;
import org.jspecify.annotations.Nullable;

/**
 * A photo as a page shows it: browsers choose among its sizes.
 *
 * @param address of the size for those browsers that can't choose
 * @param sizes all of them, as {@code srcset} lists them
 * @param full the address of the largest
 * @param width of the size at the address, in pixels
 * @param height likewise
 * @param text for those who can't see it
 * @param shows what it shows, in a word
 */
public record PhotoOnPage(String address, String sizes, String full, int width, int height, String text, String shows,
		@Nullable LocalDate takenOn, @Nullable String credit) {

	private static final int USUAL_WIDTH = 800;

	static PhotoOnPage of(Photo photo) {
		List<Photo.Size> sizes = photo.sizes();
		Photo.Size usual = sizes.stream()
			.filter((size) -> size.width() >= USUAL_WIDTH)
			.findFirst()
			.orElseGet(photo::full);
		String text = photo.words();
		return new PhotoOnPage(photo.address(usual),
				sizes.stream()
					.map((size) -> photo.address(size) + " " + size.width() + "w")
					.collect(Collectors.joining(", ")),
				photo.address(photo.full()), usual.width(), usual.height(), (text != null) ? text : "",
				photo.shows().word(), photo.takenOn(), photo.credit());
	}

}
