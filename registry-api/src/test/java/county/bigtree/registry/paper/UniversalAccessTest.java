package county.bigtree.registry.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;

import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * That the check of PDF/UA-1 can fail.
 */
class UniversalAccessTest {

	/**
	 * ISO 14289-1, 5 (it says what it is) and 7.1 (tagged, with a title that is shown).
	 */
	@Test
	void findsFaultWithAPaperThatIsNeitherTaggedNorNamed() throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (PDDocument document = new PDDocument()) {
			document.addPage(new PDPage());
			document.save(bytes);
		}
		assertThat(UniversalAccess.faults(bytes.toByteArray())).anyMatch((fault) -> fault.startsWith("6.2: "))
			.anyMatch((fault) -> fault.startsWith("7.1: "));
	}

}
