package county.bigtree.registry.pages.filing;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;

import javax.imageio.ImageIO;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.TestPhotos;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Sending photos of a measurement by the page, without scripts.
 */
@RegistryTest
class PhotosPageIT {

	private static final String COUNTY = "photoshire";

	private static boolean founded;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@BeforeEach
	void found() throws Exception {
		if (!founded) {
			this.trees.county(COUNTY, "PHS");
			founded = true;
		}
	}

	@Test
	void sendsAPhotoWithItsWordsOnce() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		String address = photos(person);
		PageReader reader = PageReader.signedIn(this.mvc, person);
		SentForm form = SentForm.of(reader.page(address), address);
		assertThat(form.value("credit")).isEqualTo(person.creditName());
		form.with("shows", "base").with("text", "The foot of the <oak>").with("takenOn", "2024-05-02");
		MockHttpServletResponse sent = reader.send(address, form, "oak.jpg", jpeg());
		assertThat(PageReader.leads(sent)).isEqualTo(address + "?done=sent");
		assertThat(PageReader.leads(reader.send(address, form, "oak.jpg", jpeg()))).isEqualTo(address + "?done=sent");
		String page = reader.page(address + "?done=sent");
		assertThat(page).contains("waits for a verifier to pass it", "alt=\"The foot of the &lt;oak&gt;\"",
				"the base of the stem", "waits to be passed");
		assertThat(page.split("<img ", -1)).as("one picture, and the template's").hasSize(3);
	}

	@Test
	void takesAPhotoBackForWhoSentIt() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		String address = photos(person);
		String photo = TestPhotos.sent(this.trees, "/api/v1" + address, person, "text", "the oak");
		PageReader reader = PageReader.signedIn(this.mvc, person);
		String withdrawal = address + "/" + photo + "/withdrawal";
		SentForm form = SentForm.of(reader.page(address), withdrawal);
		assertThat(PageReader.signedIn(this.mvc, this.people.verifier(COUNTY)).page(address))
			.doesNotContain(withdrawal);
		assertThat(PageReader.leads(reader.send(withdrawal, form))).isEqualTo(address + "?done=withdrawn");
		assertThat(reader.page(address + "?done=withdrawn")).contains("It is taken back", "taken back")
			.doesNotContain(withdrawal);
	}

	@Test
	void takesAPhotoOfATreeAloneBackToo() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		String tree = "/trees/" + this.trees.standing(COUNTY, 101, "2024-05-03").tree() + "/photos";
		String photo = TestPhotos.sent(this.trees, "/api/v1" + tree, person, "text", "the oak alone");
		PageReader reader = PageReader.signedIn(this.mvc, person);
		String withdrawal = "/mine/photos/" + photo + "/withdrawal";
		String page = reader.page("/mine/photos");
		assertThat(page).contains("alt=\"the oak alone\"", "waits to be passed", ">PHS-");
		PageReader other = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		assertThat(other.page("/mine/photos")).contains("You have sent no photo").doesNotContain(photo);
		assertThat(other.send(withdrawal, SentForm.of(page, withdrawal)).getStatus()).isIn(403, 404);
		MockHttpServletResponse done = reader.send(withdrawal, SentForm.of(page, withdrawal));
		assertThat(PageReader.leads(done)).isEqualTo("/mine/photos?done=withdrawn");
		assertThat(reader.page("/mine/photos?done=withdrawn")).contains("It is taken back", "taken back")
			.doesNotContain(withdrawal);
	}

	@Test
	void saysWhatIsLackingAndKeepsTheWords() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		String address = photos(person);
		PageReader reader = PageReader.signedIn(this.mvc, person);
		SentForm form = SentForm.of(reader.page(address), address).with("text", "A leaf");
		MockHttpServletResponse none = reader.send(address, form);
		assertThat(none.getStatus()).isEqualTo(422);
		assertThat(none.getContentAsString()).contains("Choose a photo.", "value=\"A leaf\"");
		MockHttpServletResponse noPicture = reader.send(address, form, "oak.jpg", "no picture".getBytes());
		assertThat(noPicture.getStatus()).isBetween(400, 422);
		assertThat(noPicture.getContentAsString()).contains("role=\"alert\"", "value=\"A leaf\"");
	}

	@Test
	void isForWhoFiledItAndForVerifiers() throws Exception {
		String address = photos(this.people.volunteer(COUNTY));
		assertThat(PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY)).open(address).getStatus())
			.isEqualTo(404);
		assertThat(PageReader.signedIn(this.mvc, this.people.verifier(COUNTY)).open(address).getStatus())
			.isEqualTo(200);
		assertThat(PageReader.anonymous(this.mvc).open(address).getStatus()).isEqualTo(401);
	}

	private String photos(TestPerson person) throws Exception {
		return "/measurements/"
				+ this.trees.nominate(COUNTY, person, "quercus-alba", TestTrees.measurement(100, "2024-05-02"))
					.measurement()
				+ "/photos";
	}

	private static byte[] jpeg() throws Exception {
		BufferedImage picture = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
		Graphics2D drawn = picture.createGraphics();
		drawn.setColor(Color.GREEN);
		drawn.fillOval(100, 50, 200, 200);
		drawn.dispose();
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		ImageIO.write(picture, "jpg", bytes);
		return bytes.toByteArray();
	}

}
