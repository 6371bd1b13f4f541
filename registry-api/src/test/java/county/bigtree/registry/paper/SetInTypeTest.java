package county.bigtree.registry.paper;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Names as people write them, and as some write them who mean no good.
 */
class SetInTypeTest {

	private static final SetInType SETTING = new SetInType(new PaperFonts());

	private static Pdf set(String escapedName) {
		return new Pdf(SETTING.set("""
				<html lang="en"><head><title>A paper</title><meta name="description" content="A paper"/></head><body>
				<h1>%1$s</h1><p><i>%1$s</i></p><p>the end</p><p class="lacking">some are lacking</p></body></html>"""
			.formatted(escapedName), PaperSize.LETTER));
	}

	@Test
	void showsMarkupAsItWasWritten() {
		try (Pdf pdf = set("&lt;b&gt;Oak&lt;/b&gt; &amp; &quot;Elm&quot;")) {
			assertThat(pdf.isForEveryone().text()).contains("<b>Oak</b> & \"Elm\"");
		}
	}

	@Test
	void hasTheLettersOfManyScripts() {
		String names = "Ščerbová Łódź Nguyễn Þórr Ωμέγα Дуб 樹木 かしの木";
		try (Pdf pdf = set(names)) {
			assertThat(pdf.isForEveryone().text()).contains(names).doesNotContain("�", "some are lacking");
		}
	}

	@Test
	void joinsLettersAndTheirMarks() {
		try (Pdf pdf = set("e\u0301a\u0308")) {
			assertThat(pdf.text()).contains("éä");
		}
	}

	/** Text taken out of a PDF comes as it is read, the first letter first. */
	@Test
	void setsWhatIsReadFromTheRight() {
		try (Pdf pdf = set("אלון הגדול")) {
			assertThat(pdf.isForEveryone().text()).contains("אלון").contains("הגדול").doesNotContain("�");
		}
		try (Pdf pdf = set("بلوط")) {
			assertThat(pdf.text()).doesNotContain("�", "some are lacking");
		}
	}

	@Test
	void saysWhereLettersAreLacking() {
		try (Pdf pdf = set("बरगद oak 참나무")) {
			assertThat(pdf.text()).contains("� oak �").contains("some are lacking");
		}
	}

	@Test
	void leavesOutWhatSteersAndCanNotBeHeld() {
		try (Pdf pdf = set("a\u202Eb\u200Bc\u0000d\uD800e\uFFFFf")) {
			assertThat(pdf.text()).contains("abcdef").doesNotContain("some are lacking");
		}
	}

	@Test
	void breaksALongNameWithinThePage() {
		try (Pdf pdf = set("<span class=\"long\">" + "Oakelm".repeat(40) + "</span>")) {
			assertThat(pdf.text().replace(" ", "")).contains("Oakelm".repeat(40));
			assertThat(pdf.pages()).isOne();
			assertThat(inkAtTheEdge(pdf)).as("dark dots within 9 mm of the right edge").isZero();
		}
	}

	@Test
	void givesTheSameBytesForTheSameText() {
		String html = "<html lang=\"en\"><head><title>T</title></head><body><h1>Oak</h1></body></html>";
		assertThat(SETTING.set(html, PaperSize.A4)).isEqualTo(SETTING.set(html, PaperSize.A4))
			.isNotEqualTo(SETTING.set(html, PaperSize.LETTER));
	}

	private static int inkAtTheEdge(Pdf pdf) {
		var image = pdf.image(0, 50);
		int ink = 0;
		for (int x = image.getWidth() - 18; x < image.getWidth(); x++) {
			for (int y = 0; y < image.getHeight(); y++) {
				ink += ((image.getRGB(x, y) & 0xFF) < 128) ? 1 : 0;
			}
		}
		return ink;
	}

}
