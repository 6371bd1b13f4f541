package county.bigtree.registry.photo.image;

import java.awt.image.BufferedImage;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/**
 * Turns a file that somebody sent into pictures in the sizes that are kept: looked at
 * before it is unpacked, turned upright, without what the camera noted, packed anew. At
 * most {@value #AT_ONCE} are worked on at once; who has to wait longer than a moment is
 * told to come back.
 */
@Component
public class ProcessPictures {

	/** Of the largest picture kept, in pixels. */
	public static final int MOST_SIDE = 2048;

	/** Of the smaller ones, in pixels; only where the largest is wider. */
	public static final List<Integer> WIDTHS = List.of(320, 800, 1600);

	private static final int AT_ONCE = 2;

	private static final Duration PATIENCE = Duration.ofSeconds(2);

	private static final Duration COME_BACK = Duration.ofSeconds(5);

	private final Semaphore turns;

	private final Duration patience;

	@Autowired
	ProcessPictures() {
		this(new Semaphore(AT_ONCE, true), PATIENCE);
	}

	ProcessPictures(Semaphore turns, Duration patience) {
		this.turns = turns;
		this.patience = patience;
	}

	/**
	 * The pictures made of the file, the narrowest first.
	 * @throws Problem of being invalid where the file is not taken, of being busy where
	 * too many are worked on
	 */
	public List<Picture> process(byte[] file) {
		Bare bare = Bare.of(file);
		if (!takeTurn()) {
			throw Problem
				.of(ProblemType.BUSY, "Other photos are being worked on, this one was not kept. Send it again shortly.")
				.retryAfter(COME_BACK);
		}
		try {
			return sizes(Turn.upright(Scaling.within(Unpacking.image(bare), MOST_SIDE), Turn.of(bare.exif())));
		}
		finally {
			this.turns.release();
		}
	}

	private boolean takeTurn() {
		try {
			return this.turns.tryAcquire(this.patience.toMillis(), TimeUnit.MILLISECONDS);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return false;
		}
	}

	private static List<Picture> sizes(BufferedImage largest) {
		List<Picture> pictures = new ArrayList<>(List.of(Packing.picture(largest)));
		BufferedImage present = largest;
		for (int width : WIDTHS.stream().sorted(Comparator.reverseOrder()).toList()) {
			if (width < largest.getWidth()) {
				present = Scaling.toWidth(present, width);
				pictures.add(0, Packing.picture(present));
			}
		}
		return List.copyOf(pictures);
	}

}
