package county.bigtree.registry.photo.image;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Locale;

import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

import com.twelvemonkeys.imageio.plugins.webp.WebPImageReaderSpi;

/**
 * Unpacks what is left of a file, to at most {@value #MOST_SIDE} pixels a side: of larger
 * pictures every second, third or further pixel, so that the memory needed has a bound.
 */
final class Unpacking {

	/** Twice of what is kept, so that those left out don't show. */
	static final int MOST_SIDE = 2 * ProcessPictures.MOST_SIDE;

	private Unpacking() {
	}

	/**
	 * Readers throw what they like at a file that was made to hurt them: none of it is a
	 * fault of this program.
	 */
	static BufferedImage image(Bare bare) {
		try {
			return read(bare);
		}
		catch (IOException | RuntimeException ex) {
			throw Refusal.damaged();
		}
	}

	private static BufferedImage read(Bare bare) throws IOException {
		ImageReader reader = reader(bare.format());
		Complaints complaints = new Complaints();
		try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bare.file()))) {
			reader.setInput(in, true, true);
			reader.addIIOReadWarningListener(complaints);
			ImageReadParam how = reader.getDefaultReadParam();
			int every = (bare.longest() + MOST_SIDE - 1) / MOST_SIDE;
			how.setSourceSubsampling(every, every, 0, 0);
			BufferedImage image = reader.read(0, how);
			if (complaints.cutOff()) {
				throw new IOException("The picture is not whole");
			}
			return image;
		}
		finally {
			reader.dispose();
		}
	}

	private static ImageReader reader(Format format) throws IOException {
		return (format == Format.WEBP) ? new WebPImageReaderSpi().createReaderInstance(null)
				: ImageIO.getImageReadersByFormatName(format.name().toLowerCase(Locale.ROOT)).next();
	}

}
