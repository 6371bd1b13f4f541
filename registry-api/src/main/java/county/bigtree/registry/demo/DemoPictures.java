package county.bigtree.registry.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.GeneralPath;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Random;

import javax.imageio.ImageIO;

/**
 * Draws what stands in for the demo's photos: its trees are invented.
 */
final class DemoPictures {

	private static final int WIDTH = 1600;

	private static final int HEIGHT = 1200;

	private static final Color WOOD = new Color(0x4A3B2E);

	private static final Color BARK = new Color(0x6E5D4C);

	private static final Color TAPE = new Color(0xE8C33A);

	private static final int LIMBS = 9;

	private final BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);

	private final Graphics2D graphics = this.image.createGraphics();

	/** Always the same. */
	private final Random random = new Random(46);

	private DemoPictures() {
		this.graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
	}

	/** A JPEG file of what is named. */
	static byte[] jpeg(String name) {
		DemoPictures drawing = new DemoPictures();
		switch (name) {
			case "tree" -> drawing.tree();
			case "tape" -> drawing.tape();
			default -> throw new IllegalStateException("The demo can't draw " + name);
		}
		drawing.graphics.dispose();
		ByteArrayOutputStream file = new ByteArrayOutputStream();
		try {
			ImageIO.write(drawing.image, "jpeg", file);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return file.toByteArray();
	}

	private void tree() {
		this.graphics.setPaint(new GradientPaint(0, 0, new Color(0xA9C4D6), 0, HEIGHT, new Color(0xF4EBD9)));
		this.graphics.fill(new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
		this.graphics.setPaint(new GradientPaint(0, 900, new Color(0x8DA05F), 0, HEIGHT, new Color(0x5F7440)));
		this.graphics.fill(new Ellipse2D.Double(-600, 930, WIDTH + 1200, 1000));
		this.graphics.setColor(new Color(60, 70, 40, 90));
		this.graphics.fill(new Ellipse2D.Double(420, 985, 820, 90));
		limb(WIDTH / 2.0, 1030, Math.PI / 2, 230, 92, LIMBS);
	}

	/** A limb with those that it bears, its leaves last. */
	private void limb(double x, double y, double angle, double length, double width, int left) {
		double endX = x + length * Math.cos(angle);
		double endY = y - length * Math.sin(angle);
		this.graphics.setColor(WOOD);
		this.graphics.setStroke(new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
		this.graphics.draw(new Line2D.Double(x, y, endX, endY));
		if (left == 0) {
			leaves(endX, endY);
			return;
		}
		double spread = 0.34 + 0.22 * this.random.nextDouble();
		limb(endX, endY, angle + spread, length * (0.76 + 0.1 * this.random.nextDouble()), width * 0.68, left - 1);
		limb(endX, endY, angle - spread, length * (0.76 + 0.1 * this.random.nextDouble()), width * 0.68, left - 1);
	}

	private void leaves(double x, double y) {
		for (int leaf = 0; leaf < 7; leaf++) {
			int shade = this.random.nextInt(70);
			this.graphics.setColor(new Color(60 + shade, 95 + shade, 45 + shade / 3, 150));
			double size = 14 + this.random.nextInt(18);
			this.graphics.fill(new Ellipse2D.Double(x + this.random.nextGaussian() * 24 - size / 2,
					y + this.random.nextGaussian() * 20 - size / 2, size, size * 0.8));
		}
	}

	private void tape() {
		this.graphics.setColor(BARK);
		this.graphics.fill(new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
		for (int furrow = 0; furrow < 260; furrow++) {
			furrow(this.random.nextDouble() * WIDTH);
		}
		this.graphics.setColor(new Color(0, 0, 0, 70));
		this.graphics.fill(new Rectangle2D.Double(0, 588, WIDTH, 84));
		this.graphics.setColor(TAPE);
		this.graphics.fill(new Rectangle2D.Double(0, 570, WIDTH, 84));
		this.graphics.setColor(Color.BLACK);
		for (int tick = 0; tick * 16 < WIDTH; tick++) {
			this.graphics.setStroke(new BasicStroke((tick % 10 == 0) ? 5 : 2));
			this.graphics.draw(new Line2D.Double(tick * 16, 570, tick * 16, (tick % 10 == 0) ? 625 : 595));
		}
	}

	private void furrow(double from) {
		int shade = this.random.nextInt(60) - 30;
		this.graphics.setColor(new Color(72 + shade, 60 + shade, 48 + shade, 150));
		this.graphics
			.setStroke(new BasicStroke(4 + this.random.nextInt(14), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
		GeneralPath path = new GeneralPath();
		double x = from;
		double y = this.random.nextDouble() * HEIGHT;
		path.moveTo(x, y);
		for (int step = 0; step < 6; step++) {
			x += this.random.nextGaussian() * 14;
			y += 50;
			path.lineTo(x, y);
		}
		this.graphics.draw(path);
	}

}
