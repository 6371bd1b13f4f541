package county.bigtree.registry.photo.image;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Semaphore;

import javax.imageio.ImageIO;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.GpsDirectory;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/**
 * What is made of files that were sent: good ones come out upright, smaller and without a
 * word; hostile ones are refused before or while they are unpacked. What comes out is
 * read by a library that the program itself does not read pictures with.
 */
class ProcessPicturesTest {

	private static final String SECRET = "canary of the camera";

	private final ProcessPictures processing = new ProcessPictures();

	@Test
	void keepsTheLargestAndThreeSmallerOnes() {
		List<Picture> pictures = this.processing.process(TestPictures.jpeg(3000, 1500));
		assertThat(pictures).extracting(Picture::width).containsExactly(320, 800, 1600, 2048);
		assertThat(pictures).extracting(Picture::height).containsExactly(160, 400, 800, 1024);
	}

	@Test
	void makesNoPictureLargerThanItCame() {
		assertThat(this.processing.process(TestPictures.jpeg(400, 300))).extracting(Picture::width)
			.containsExactly(320, 400);
	}

	@Test
	void leavesOutPixelsOfVeryLargeOnes() throws IOException {
		Picture largest = largest(TestPictures.jpeg(7000, 5000));
		assertThat(largest.width()).isEqualTo(2048);
		assertThat(largest.height()).isBetween(1462, 1464);
		requireQuarters(image(largest), Color.RED, Color.GREEN, Color.BLUE, Color.WHITE);
	}

	@ParameterizedTest
	@CsvSource({ "1,R,G,B,W", "2,G,R,W,B", "3,W,B,G,R", "4,B,W,R,G", "5,R,B,G,W", "6,B,R,W,G", "7,W,G,B,R", "8,G,W,R,B",
			"9,R,G,B,W", "0,R,G,B,W" })
	void turnsUprightAsTheCameraWasHeld(int orientation, String upperLeft, String upperRight, String lowerLeft,
			String lowerRight) throws IOException {
		Picture largest = largest(TestPictures.withExif(TestPictures.jpeg(400, 200), orientation, SECRET));
		boolean lying = orientation >= 5 && orientation <= 8;
		assertThat(largest.width()).isEqualTo(lying ? 200 : 400);
		assertThat(largest.height()).isEqualTo(lying ? 400 : 200);
		requireQuarters(image(largest), colour(upperLeft), colour(upperRight), colour(lowerLeft), colour(lowerRight));
	}

	@Test
	void saysNothingOfWhatTheCameraNoted() throws Exception {
		byte[] xmp = ("http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">" + SECRET + "</x:xmpmeta>")
			.getBytes(StandardCharsets.US_ASCII);
		byte[] sent = TestPictures.withSegment(TestPictures.withExif(TestPictures.jpeg(1000, 600), 6, SECRET), 0xE1,
				xmp);
		sent = TestPictures.withSegment(sent, 0xFE, SECRET.getBytes(StandardCharsets.US_ASCII));
		sent = TestPictures.withSegment(sent, 0xED, ("Photoshop 3.0\0" + SECRET).getBytes(StandardCharsets.US_ASCII));
		assertThat(metadata(sent).getFirstDirectoryOfType(GpsDirectory.class).getGeoLocation().getLatitude())
			.as("what is sent says where")
			.isEqualTo(41);
		for (Picture picture : this.processing.process(sent)) {
			requireSilent(picture);
		}
	}

	@Test
	void saysNothingOfWhatOtherFormatsHold() throws Exception {
		byte[] exif = TestPictures.exif(1, SECRET);
		byte[] png = TestPictures.png(200, 200, 200 * 601, TestPictures.pngChunk("eXIf", exif),
				TestPictures.pngChunk("tEXt", ("Comment\0" + SECRET).getBytes(StandardCharsets.US_ASCII)));
		byte[] webp = TestPictures.webp(TestPictures.webpChunk("VP8X", new byte[] { 8, 0, 0, 0, 119, 0, 0, 99, 0, 0 }),
				TestPictures.lossyWebp(), TestPictures.webpChunk("EXIF", exif));
		for (byte[] sent : List.of(png, webp)) {
			assertThat(new String(sent, StandardCharsets.ISO_8859_1)).contains(SECRET);
			for (Picture picture : this.processing.process(sent)) {
				requireSilent(picture);
			}
		}
	}

	@Test
	void dropsWhatIsHungOnBehindThePicture() throws Exception {
		byte[] both = TestPictures.joined(TestPictures.jpeg(300, 200),
				("PK\u0003\u0004<script>" + SECRET + "</script>").getBytes(StandardCharsets.ISO_8859_1));
		for (Picture picture : this.processing.process(both)) {
			requireSilent(picture);
		}
	}

	@Test
	void readsWebpWithAndWithoutLoss() throws IOException {
		BufferedImage lossy = image(largest(TestPictures.webp(TestPictures.lossyWebp())));
		assertThat(near(lossy, 20, 20, new Color(0xC0A020))).isTrue();
		assertThat(near(lossy, 100, 80, new Color(0x204060))).isTrue();
		BufferedImage lossless = image(largest(TestPictures.webp(TestPictures.losslessWebp(150, 110))));
		assertThat(lossless.getWidth()).isEqualTo(150);
		assertThat(near(lossless, 75, 55, new Color(0x408020))).isTrue();
	}

	@Test
	void turnsWebpAndPngToo() {
		byte[] lying = TestPictures.exif(6, SECRET);
		Picture webp = largest(TestPictures.webp(TestPictures.lossyWebp(), TestPictures.webpChunk("EXIF", lying)));
		assertThat(webp.width()).isEqualTo(100);
		Picture png = largest(TestPictures.png(300, 200, 200 * 901, TestPictures.pngChunk("eXIf", lying)));
		assertThat(png.width()).isEqualTo(200);
	}

	@Test
	void showsWhatIsTransparentAsWhite() throws IOException {
		BufferedImage clear = new BufferedImage(120, 120, BufferedImage.TYPE_INT_ARGB);
		assertThat(near(image(largest(TestPictures.written(clear, "png"))), 60, 60, Color.WHITE)).isTrue();
	}

	@Test
	void goesByWhatAFileHoldsAndNotByItsName() {
		refuses(TestPictures.written(TestPictures.quarters(200, 200), "gif"), "not-a-photo");
		refuses("<svg xmlns=\"http://www.w3.org/2000/svg\"/>".getBytes(StandardCharsets.UTF_8), "not-a-photo");
		refuses("%PDF-1.7".getBytes(StandardCharsets.UTF_8), "not-a-photo");
		refuses(new byte[0], "not-a-photo");
	}

	@ParameterizedTest
	@ValueSource(ints = { 3, 10, 200, 500, 1500 })
	void refusesAFileThatIsCutOff(int kept) {
		refuses(Arrays.copyOf(TestPictures.jpeg(300, 300), kept), "cut-off");
	}

	@Test
	void refusesAFileCutOffWithAnEndHungOn() {
		byte[] whole = TestPictures.written(noise(600, 400), "jpeg");
		byte[] half = Arrays.copyOf(whole, whole.length / 2);
		half[half.length - 2] = (byte) 0xFF;
		half[half.length - 1] = (byte) 0xD9;
		refuses(half, "damaged");
	}

	@Test
	void refusesCutOffPngAndWebp() {
		byte[] png = TestPictures.png(300, 300, 300 * 901);
		refuses(Arrays.copyOf(png, png.length - 13), "cut-off");
		refuses(TestPictures.png(300, 300, 150 * 901), "damaged");
		byte[] webp = TestPictures.webp(TestPictures.lossyWebp());
		refuses(Arrays.copyOf(webp, webp.length - 40), "cut-off");
	}

	@Test
	void refusesABombByWhatItSaysOfItself() {
		byte[] bomb = TestPictures.png(30_000, 30_000, 50_000_000);
		assertThat(bomb.length).isLessThan(100_000);
		refuses(bomb, "too-many-pixels");
		refuses(TestPictures.png(Integer.MAX_VALUE, Integer.MAX_VALUE, 10), "too-many-pixels");
		refuses(TestPictures.png(-1, 500, 10), "damaged");
		refuses(TestPictures.webp(TestPictures.losslessWebp(16384, 16384)), "too-many-pixels");
		byte[] jpeg = TestPictures.jpeg(200, 200);
		byte[] large = jpeg.clone();
		int frame = frame(large);
		Arrays.fill(large, frame + 5, frame + 9, (byte) 0xFF);
		refuses(large, "too-many-pixels");
	}

	@Test
	void doesNotUnpackTextsHiddenInAPicture() {
		byte[] zeroes = TestPictures.packed(new byte[300_000_000]);
		byte[] text = TestPictures.joined("Comment\0\0".getBytes(StandardCharsets.US_ASCII), zeroes);
		byte[] palette = TestPictures.joined(Arrays.copyOf(TestPictures.png(1, 1, 1), 8),
				TestPictures.pngChunk("IHDR", new byte[] { 0, 0, 0, (byte) 200, 0, 0, 0, (byte) 200, 8, 3, 0, 0, 0 }),
				TestPictures.pngChunk("zTXt", text), TestPictures.pngChunk("iCCP", text),
				TestPictures.pngChunk("PLTE", new byte[] { 1, 2, 3 }),
				TestPictures.pngChunk("IDAT", TestPictures.packed(new byte[200 * 201])),
				TestPictures.pngChunk("IEND", new byte[0]));
		assertThat(this.processing.process(palette)).hasSize(1);
	}

	@Test
	void refusesACanvasThatSaysOtherwiseThanItsPicture() {
		byte[] small = TestPictures.webpChunk("VP8X", new byte[] { 0, 0, 0, 0, 99, 0, 0, 99, 0, 0 });
		refuses(TestPictures.webp(small, TestPictures.losslessWebp(16384, 16384)), "too-many-pixels");
	}

	@Test
	void refusesPicturesThatMove() {
		refuses(TestPictures.png(200, 200, 200 * 601, TestPictures.pngChunk("acTL", new byte[8])), "several-pictures");
		refuses(TestPictures.webp(TestPictures.webpChunk("VP8X", new byte[] { 2, 0, 0, 0, 99, 0, 0, 99, 0, 0 }),
				TestPictures.losslessWebp(100, 100)), "several-pictures");
		refuses(TestPictures.webp(TestPictures.losslessWebp(100, 100), TestPictures.losslessWebp(100, 100)),
				"several-pictures");
	}

	@Test
	void refusesAPictureWithMoreScansThanAnyCameraMakes() {
		byte[] jpeg = TestPictures.jpeg(200, 200);
		int scan = scan(jpeg);
		byte[] again = Arrays.copyOfRange(jpeg, scan, jpeg.length - 2);
		byte[] many = Arrays.copyOf(jpeg, jpeg.length - 2);
		for (int times = 0; times < 40; times++) {
			many = TestPictures.joined(many, again);
		}
		refuses(TestPictures.joined(many, new byte[] { (byte) 0xFF, (byte) 0xD9 }), "damaged");
	}

	@Test
	void refusesOddShapesAndColours() {
		refuses(TestPictures.jpeg(99, 500), "too-small");
		refuses(TestPictures.jpeg(2000, 100), "too-oblong");
		byte[] four = TestPictures.jpeg(200, 200);
		four[frame(four) + 9] = 4;
		refuses(four, "unusual-jpeg");
	}

	@Test
	void refusesWhateverIsDamagedAnywhere() {
		byte[] whole = TestPictures.withExif(TestPictures.written(noise(200, 160), "jpeg"), 6, SECRET);
		java.util.Random random = new java.util.Random(20261126);
		int taken = 0;
		for (int round = 0; round < 400; round++) {
			byte[] damaged = whole.clone();
			for (int hit = 0; hit < 4; hit++) {
				damaged[random.nextInt(damaged.length)] = (byte) random.nextInt();
			}
			try {
				this.processing.process(damaged);
				taken++;
			}
			catch (Problem ex) {
				assertThat(ex.type()).isEqualTo(ProblemType.INVALID);
			}
		}
		assertThat(taken).as("pictures that are seen in spite of it").isPositive();
	}

	@Test
	void tellsToComeBackWhereTooManyAreWorkedOn() {
		ProcessPictures busy = new ProcessPictures(new Semaphore(0), Duration.ZERO);
		assertThatExceptionOfType(Problem.class).isThrownBy(() -> busy.process(TestPictures.jpeg(200, 200)))
			.satisfies((problem) -> {
				assertThat(problem.type()).isEqualTo(ProblemType.BUSY);
				assertThat(problem.headers().getFirst("Retry-After")).isEqualTo("5");
			});
	}

	@Test
	void givesBackItsTurnWhateverComesOfTheFile() {
		Semaphore one = new Semaphore(1);
		ProcessPictures alone = new ProcessPictures(one, Duration.ZERO);
		alone.process(TestPictures.jpeg(200, 200));
		assertThat(one.availablePermits()).isOne();
		assertThatExceptionOfType(Problem.class).isThrownBy(() -> alone.process(TestPictures.png(300, 300, 150 * 901)));
		assertThat(one.availablePermits()).isOne();
	}

	private void refuses(byte[] file, String code) {
		assertThatExceptionOfType(Problem.class).isThrownBy(() -> this.processing.process(file))
			.satisfies((problem) -> {
				assertThat(problem.type()).isEqualTo(ProblemType.INVALID);
				assertThat(problem.errors()).hasSize(1);
				assertThat(problem.errors().get(0).pointer()).isEqualTo("#/file");
				assertThat(problem.errors().get(0).code()).isEqualTo(code);
			});
	}

	private Picture largest(byte[] file) {
		List<Picture> pictures = this.processing.process(file);
		return pictures.get(pictures.size() - 1);
	}

	private static void requireSilent(Picture picture) throws Exception {
		assertThat(new String(picture.jpeg(), StandardCharsets.ISO_8859_1)).doesNotContain(SECRET);
		assertThat(metadata(picture.jpeg()).getDirectories()).extracting(Directory::getName)
			.isSubsetOf("JPEG", "JFIF", "Huffman", "File Type");
	}

	private static Metadata metadata(byte[] file) throws ImageProcessingException, IOException {
		return ImageMetadataReader.readMetadata(new ByteArrayInputStream(file));
	}

	private static BufferedImage image(Picture picture) throws IOException {
		return ImageIO.read(new ByteArrayInputStream(picture.jpeg()));
	}

	private static int frame(byte[] jpeg) {
		return find(jpeg, 0xC0);
	}

	private static int scan(byte[] jpeg) {
		return find(jpeg, 0xDA);
	}

	/** Where the marker begins; asked only of files that the JDK wrote. */
	private static int find(byte[] jpeg, int marker) {
		for (int at = 2; at < jpeg.length; at += 2 + ((jpeg[at + 2] & 0xFF) << 8 | jpeg[at + 3] & 0xFF)) {
			if ((jpeg[at + 1] & 0xFF) == marker) {
				return at;
			}
		}
		throw new IllegalArgumentException("No marker " + marker);
	}

	private static BufferedImage noise(int width, int height) {
		BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
		java.util.Random random = new java.util.Random(7);
		for (int y = 0; y < height; y++) {
			for (int x = 0; x < width; x++) {
				image.setRGB(x, y, random.nextInt());
			}
		}
		return image;
	}

	private static Color colour(String letter) {
		return switch (letter) {
			case "R" -> Color.RED;
			case "G" -> Color.GREEN;
			case "B" -> Color.BLUE;
			default -> Color.WHITE;
		};
	}

	private static void requireQuarters(BufferedImage image, Color upperLeft, Color upperRight, Color lowerLeft,
			Color lowerRight) {
		int width = image.getWidth();
		int height = image.getHeight();
		assertThat(near(image, width / 4, height / 4, upperLeft)).as("upper left").isTrue();
		assertThat(near(image, 3 * width / 4, height / 4, upperRight)).as("upper right").isTrue();
		assertThat(near(image, width / 4, 3 * height / 4, lowerLeft)).as("lower left").isTrue();
		assertThat(near(image, 3 * width / 4, 3 * height / 4, lowerRight)).as("lower right").isTrue();
	}

	private static boolean near(BufferedImage image, int x, int y, Color wanted) {
		Color there = new Color(image.getRGB(x, y));
		return Math.abs(there.getRed() - wanted.getRed()) + Math.abs(there.getGreen() - wanted.getGreen())
				+ Math.abs(there.getBlue() - wanted.getBlue()) < 40;
	}

}
