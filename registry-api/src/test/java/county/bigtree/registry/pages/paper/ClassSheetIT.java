package county.bigtree.registry.pages.paper;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.paper.Pdf;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * The sheet for a class and its answers.
 */
@RegistryTest
class ClassSheetIT {

	@Autowired
	private MockMvc mvc;

	@Test
	void hasOneSideAndNoAnswers() throws Exception {
		for (String size : new String[] { "letter", "a4" }) {
			try (Pdf pdf = paper("/class-sheet.pdf?paper=" + size)) {
				assertThat(pdf.isForEveryone().pages()).isOne();
				assertThat(pdf.pictures()).hasSize(3);
				assertThat(pdf.text())
					.containsSubsequence("1. Work it out", "m = 4", "L = 36 in", "r = 7 in", "C = m × L + r",
							"2. Who is off?", "C 48.2 in", "3. A tree of your own", "Do not climb.")
					.doesNotContain("151 in", "69.67", "234.4");
			}
		}
	}

	/**
	 * By hand: 4 sticks of 36 in and 7 in are 151 in; 5.5 ft times 9.5 over 0.75 are
	 * 69.67 ft; the mean of 62 and 48 is 55; 151 + 69.67 + 55 / 4 are 234.42. A girth of
	 * 48.2 in times pi is 151.4 in.
	 */
	@Test
	void answersAsOneWouldByHand() throws Exception {
		try (Pdf pdf = paper("/class-sheet-answers.pdf")) {
			assertThat(pdf.isForEveryone().pages()).isOne();
			assertThat(pdf.text()).contains("4 × 36 in + 7 in 151 in", "69.6667 ft", "55 ft",
					"234.42 points, plus or minus", "diameter and girth may have been mixed up", "150.875 in");
		}
	}

	private Pdf paper(String address) throws Exception {
		return new Pdf(this.mvc.perform(get(address))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsByteArray());
	}

}
