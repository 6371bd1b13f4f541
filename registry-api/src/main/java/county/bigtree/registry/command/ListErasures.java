package county.bigtree.registry.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

import county.bigtree.registry.erasure.ErasureList;

import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Service;

/**
 * {@code erasures FILE}: writes the list of what was erased, to be kept beside archives.
 */
@Service
class ListErasures implements RegisterCommand {

	private final ErasureList erasures;

	private final ApplicationArguments arguments;

	ListErasures(ErasureList erasures, ApplicationArguments arguments) {
		this.erasures = erasures;
		this.arguments = arguments;
	}

	@Override
	public String word() {
		return "erasures";
	}

	@Override
	public int run(Report report) {
		List<String> words = this.arguments.getNonOptionArgs();
		if (words.size() != 1) {
			report.line("Name one file that is not there yet: erasures FILE");
			return FAILED;
		}
		try {
			report.line("%s: %,d erasures, by identifiers alone", words.get(0),
					this.erasures.write(Path.of(words.get(0))));
			return WELL;
		}
		catch (IOException ex) {
			report.line("%s could not be written: %s", words.get(0), ex);
			return FAILED;
		}
	}

}
