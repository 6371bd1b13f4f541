package county.bigtree.registry.edition;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.problem.Problem;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * The files of editions. They are kept to the byte as they were published, and given so
 * as long as every tree that they name may still be shown. Where an owner wishes
 * otherwise since, what is given is written anew without that tree.
 */
@Component
public class EditionFiles {

	private final JdbcClient jdbc;

	private final JsonMapper json;

	private final Showings showings;

	private final EditionInPdf pdf;

	EditionFiles(JdbcClient jdbc, JsonMapper json, Showings showings, EditionInPdf pdf) {
		this.jdbc = jdbc;
		this.json = json;
		this.showings = showings;
		this.pdf = pdf;
	}

	/** The list in all its forms. */
	Map<Form, byte[]> write(EditionList list) {
		Map<Form, byte[]> files = new EnumMap<>(Form.class);
		files.put(Form.LIST, this.json.writeValueAsBytes(list));
		files.put(Form.CSV, EditionInCsv.write(list));
		files.put(Form.PDF, this.pdf.write(list));
		return files;
	}

	void keep(UUID edition, Map<Form, byte[]> files) {
		files.forEach((form, body) -> this.jdbc.sql("insert into edition_file (edition, form, body) values (?, ?, ?)")
			.params(edition, form.word(), body)
			.update());
	}

	/**
	 * The list as it may be shown today.
	 * @throws Problem where the edition is not published
	 */
	@Transactional(readOnly = true)
	public Shown list(Edition edition) {
		EditionList list = this.json.readValue(body(edition, Form.LIST), EditionList.class);
		Set<UUID> unlisted = this.showings.unlisted(list.trees().distinct().toList());
		return new Shown(unlisted.isEmpty() ? list : list.without(unlisted), unlisted.isEmpty());
	}

	/**
	 * A file as it may be given today.
	 * @throws Problem where the edition is not published, or has no such file
	 */
	@Transactional(readOnly = true)
	public Given file(Edition edition, Form form) {
		Shown shown = list(edition);
		return shown.asPublished() ? new Given(body(edition, form), true)
				: new Given(write(shown.list()).getOrDefault(form, new byte[0]), false);
	}

	private byte[] body(Edition edition, Form form) {
		return this.jdbc.sql("select body from edition_file where edition = ? and form = ?")
			.params(edition.id(), form.word())
			.query((row, number) -> row.getBytes("body"))
			.optional()
			.orElseThrow(() -> Problem.notFound("This edition is not published in this form."));
	}

	static byte[] sha256(byte[] bytes) {
		try {
			return MessageDigest.getInstance("SHA-256").digest(bytes);
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

	/**
	 * In which forms an edition is kept.
	 */
	public enum Form {

		/** JSON, of which the pages are made. */
		LIST, CSV, PDF;

		String word() {
			return name().toLowerCase(Locale.ROOT);
		}

	}

	/**
	 * A list as it is shown.
	 *
	 * @param asPublished whether it is the one that was published; else trees are left
	 * out of it since
	 */
	public record Shown(EditionList list, boolean asPublished) {
	}

	/**
	 * A file as it is given.
	 *
	 * @param asPublished whether it is so to the byte
	 */
	public record Given(byte[] bytes, boolean asPublished) {
	}

}
