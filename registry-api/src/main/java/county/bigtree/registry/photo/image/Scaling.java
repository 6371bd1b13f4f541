package county.bigtree.registry.photo.image;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.function.Consumer;

/**
 * Makes images smaller, by halves and then to size, so that every pixel tells of all that
 * it stands for. What is transparent becomes white, and all colours sRGB.
 */
final class Scaling {

	private Scaling() {
	}

	/** At most so many pixels on the longest side; never larger than it was. */
	static BufferedImage within(BufferedImage image, int longest) {
		double factor = Math.min(1, (double) longest / Math.max(image.getWidth(), image.getHeight()));
		return to(image, scaled(image.getWidth(), factor), scaled(image.getHeight(), factor));
	}

	/** So many pixels wide, of the same shape. */
	static BufferedImage toWidth(BufferedImage image, int width) {
		return to(image, width, scaled(image.getHeight(), (double) width / image.getWidth()));
	}

	private static int scaled(int side, double factor) {
		return (int) Math.max(1, Math.round(side * factor));
	}

	private static BufferedImage to(BufferedImage image, int width, int height) {
		BufferedImage present = image;
		while (present.getWidth() > 2 * width) {
			present = drawnAt(present, (present.getWidth() + 1) / 2, (present.getHeight() + 1) / 2);
		}
		return drawnAt(present, width, height);
	}

	private static BufferedImage drawnAt(BufferedImage image, int width, int height) {
		return drawn(canvas(width, height),
				(graphics) -> graphics.drawImage(image, 0, 0, width, height, Color.WHITE, null));
	}

	static BufferedImage canvas(int width, int height) {
		return new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
	}

	static BufferedImage drawn(BufferedImage canvas, Consumer<Graphics2D> drawing) {
		Graphics2D graphics = canvas.createGraphics();
		try {
			graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
			drawing.accept(graphics);
		}
		finally {
			graphics.dispose();
		}
		return canvas;
	}

}
