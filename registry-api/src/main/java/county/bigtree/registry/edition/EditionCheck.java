package county.bigtree.registry.edition;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.UUID;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.jspecify.annotations.Nullable;

import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What was published as an edition is kept to the byte, and the head of the journal that
 * it prints is on record.
 */
@Component
@Order(12)
class EditionCheck implements RegisterCheck {

	private final JdbcClient jdbc;

	EditionCheck(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@Override
	public String subject() {
		return "editions as they were published";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from edition_publication").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		this.jdbc
			.sql("""
					select p.edition, e.county, e.name, p.list_sha256, p.csv_sha256, p.pdf_sha256,
					  exists (select from change where county = e.county and seq = p.head_seq and hash = p.head_chain) as head
					from edition_publication p join edition e on e.id = p.edition order by p.edition""")
			.query((row, number) -> new Published(row.getObject("edition", UUID.class),
					row.getString("county") + "/" + row.getString("name"), row.getBoolean("head"),
					row.getBytes("list_sha256"), row.getBytes("csv_sha256"), row.getBytes("pdf_sha256")))
			.list()
			.forEach((published) -> look(published, findings));
	}

	private void look(Published published, Findings findings) {
		Map<String, byte @Nullable []> kept = digests(published.edition());
		compare(published, "list", published.list(), kept, findings);
		compare(published, "csv", published.csv(), kept, findings);
		compare(published, "pdf", published.pdf(), kept, findings);
		if (!published.head()) {
			findings.add("Edition %s prints a head of the journal that is not on record".formatted(published.name()));
		}
		findings.looked();
	}

	/** The SHA-256 of each file kept, by form. */
	private Map<String, byte @Nullable []> digests(UUID edition) {
		Map<String, byte @Nullable []> digests = new HashMap<>();
		this.jdbc.sql("select form, sha256(body) as digest from edition_file where edition = ?")
			.param(edition)
			.query((row) -> {
				digests.put(row.getString("form"), row.getBytes("digest"));
			});
		return digests;
	}

	private static void compare(Published published, String form, byte @Nullable [] digest,
			Map<String, byte @Nullable []> kept, Findings findings) {
		if (!Arrays.equals(digest, kept.get(form))) {
			findings.add("Edition %s: its %s is not the one that was published".formatted(published.name(), form));
		}
	}

	private record Published(UUID edition, String name, boolean head, byte @Nullable [] list, byte @Nullable [] csv,
			byte @Nullable [] pdf) {
	}

}
