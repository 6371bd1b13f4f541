package county.bigtree.registry.paper;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

import org.verapdf.core.EncryptedPdfException;
import org.verapdf.core.ModelParsingException;
import org.verapdf.core.ValidationException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/**
 * What veraPDF, which knows nothing of how a paper is made, finds against PDF/UA-1 (ISO
 * 14289-1).
 */
final class UniversalAccess {

	private static final int MOST = 20;

	static {
		VeraGreenfieldFoundryProvider.initialise();
	}

	private UniversalAccess() {
	}

	/** What is wrong, with the clause of the standard; empty where nothing is. */
	static List<String> faults(byte[] pdf) {
		try (PDFAParser parser = Foundries.defaultInstance()
			.createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
				PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
			return validator.validate(parser)
				.getTestAssertions()
				.stream()
				.filter((one) -> one.getStatus() == TestAssertion.Status.FAILED)
				.limit(MOST)
				.map((one) -> one.getRuleId().getClause() + ": " + one.getMessage())
				.toList();
		}
		catch (ModelParsingException | EncryptedPdfException | ValidationException ex) {
			throw new IllegalArgumentException(ex);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
