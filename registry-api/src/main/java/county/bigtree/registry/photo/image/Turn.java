package county.bigtree.registry.photo.image;

import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.Collection;

import com.drew.lang.ByteArrayReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifReader;
import org.jspecify.annotations.Nullable;

/**
 * How the camera was held: the orientations 1 to 8 of Exif (CIPA DC-008, 4.6.4). What
 * says anything else is taken as upright.
 */
final class Turn {

	private static final int UPRIGHT = 1;

	private static final int MOST = 8;

	/** From it on, width and height change places. */
	private static final int FIRST_LYING = 5;

	private Turn() {
	}

	/** Reads the orientation; upright where none can be read. */
	static int of(byte @Nullable [] exif) {
		if (exif == null) {
			return UPRIGHT;
		}
		Metadata noted = new Metadata();
		new ExifReader().extract(new ByteArrayReader(exif), noted);
		Collection<ExifIFD0Directory> directories = noted.getDirectoriesOfType(ExifIFD0Directory.class);
		return directories.stream()
			.map((directory) -> directory.getInteger(ExifIFD0Directory.TAG_ORIENTATION))
			.filter((turn) -> turn != null && turn >= UPRIGHT && turn <= MOST)
			.findFirst()
			.orElse(UPRIGHT);
	}

	static BufferedImage upright(BufferedImage image, int turn) {
		if (turn == UPRIGHT) {
			return image;
		}
		int width = image.getWidth();
		int height = image.getHeight();
		BufferedImage upright = (turn >= FIRST_LYING) ? Scaling.canvas(height, width) : Scaling.canvas(width, height);
		return Scaling.drawn(upright, (graphics) -> graphics.drawImage(image, transform(turn, width, height), null));
	}

	private static AffineTransform transform(int turn, int width, int height) {
		return switch (turn) {
			case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
			case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
			case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
			case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
			case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
			case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
			case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
			default -> new AffineTransform();
		};
	}

}
