package county.bigtree.registry.photo.image;

import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;

/**
 * Hears what a reader of images complains of while it goes on. The reader of JPEG fills
 * up with grey what is missing, and says "premature end".
 */
final class Complaints implements IIOReadWarningListener {

	private boolean cutOff;

	boolean cutOff() {
		return this.cutOff;
	}

	@Override
	public void warningOccurred(ImageReader source, String warning) {
		this.cutOff |= warning.contains("remature end");
	}

}
