package county.bigtree.domain.measuring;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The page of methods against the methods.
 */
class MethodsPageTest {

	@ParameterizedTest
	@EnumSource
	void everyMethodStandsOnThePage(Method method) throws IOException {
		assertThat(Files.readString(Path.of("docs/methods.md"))).contains("| \"" + method.code() + "\" `");
	}

}
