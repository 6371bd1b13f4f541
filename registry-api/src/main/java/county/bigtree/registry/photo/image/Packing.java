package county.bigtree.registry.photo.image;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * Packs an image as JPEG, with nothing beside it.
 */
final class Packing {

	private static final float QUALITY = 0.85f;

	private Packing() {
	}

	static Picture picture(BufferedImage image) {
		ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
		ByteArrayOutputStream packed = new ByteArrayOutputStream();
		try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(packed)) {
			ImageWriteParam how = writer.getDefaultWriteParam();
			how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
			how.setCompressionQuality(QUALITY);
			writer.setOutput(out);
			writer.write(null, new IIOImage(image, null, null), how);
		}
		catch (IOException ex) {
			throw new UncheckedIOException("An image could not be packed in memory", ex);
		}
		finally {
			writer.dispose();
		}
		return new Picture(image.getWidth(), image.getHeight(), packed.toByteArray());
	}

}
