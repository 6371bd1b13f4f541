package county.bigtree.registry.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.erasure.EraseAgain;
import county.bigtree.registry.erasure.ErasureList;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Actors;

import org.springframework.boot.ApplicationArguments;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/**
 * {@code erase-again LIST EMAIL}: erases what a list of erasures names and an earlier
 * archive brought back, in the name of an administrator.
 */
@Service
class RepeatErasures implements RegisterCommand {

	private final EraseAgain eraseAgain;

	private final Actors actors;

	private final JdbcClient jdbc;

	private final ApplicationArguments arguments;

	RepeatErasures(EraseAgain eraseAgain, Actors actors, JdbcClient jdbc, ApplicationArguments arguments) {
		this.eraseAgain = eraseAgain;
		this.actors = actors;
		this.jdbc = jdbc;
		this.arguments = arguments;
	}

	@Override
	public String word() {
		return "erase-again";
	}

	@Override
	public int run(Report report) {
		List<String> words = this.arguments.getNonOptionArgs();
		Optional<Actor> administrator = (words.size() == 2) ? administrator(words.get(1)) : Optional.empty();
		if (administrator.isEmpty()) {
			report.line("Name the list and an administrator: erase-again LIST EMAIL");
			return FAILED;
		}
		try {
			List<ErasureList.Erased> list = ErasureList.read(Path.of(words.get(0)));
			report.line("Erased again: %,d of %,d on the list; the others are not here, or went along.",
					this.eraseAgain.erase(list, administrator.get()), list.size());
			List<UUID> imports = this.eraseAgain.importsToErase(list);
			imports.forEach((job) -> report
				.line("Import %s has rows that were not taken, which had been erased: erase them on its page, or with "
						+ "DELETE /api/v1/imports/%s/untaken-rows.", job, job));
			return imports.isEmpty() ? WELL : NOT_WELL;
		}
		catch (IOException | IllegalArgumentException ex) {
			report.line("%s is no list of erasures that can be read: %s", words.get(0), ex.getMessage());
			return FAILED;
		}
	}

	private Optional<Actor> administrator(String email) {
		return this.jdbc.sql("select id from person where lower(email) = lower(?) and active")
			.param(email)
			.query(UUID.class)
			.optional()
			.flatMap(this.actors::find)
			.filter(Actor::administrator);
	}

}
