package county.bigtree.registry.journal;

import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalLong;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Each county's chain: numbers without a gap, instants that rise, hashes that follow from
 * the entries, a head that is the end; and each entry tells of exactly the facts that the
 * tables hold.
 */
@Component
@Order(1)
class JournalCheck implements RegisterCheck {

	private static final int CHANGES = 500;

	private static final int BYTES = 8_000_000;

	private final JdbcClient jdbc;

	private final FactsCheck facts;

	JournalCheck(JdbcClient jdbc, FactsCheck facts) {
		this.jdbc = jdbc;
		this.facts = facts;
	}

	@Override
	public String subject() {
		return "changes, their chain and their facts";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong
			.of(this.jdbc.sql("select coalesce(sum(seq), 0)::bigint from county_head").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		List<String> counties = this.jdbc.sql("select key from county order by key").query(String.class).list();
		for (String county : counties) {
			Chain chain = new Chain(county, findings);
			FactsCheck.OfCounty told = this.facts.of(county, findings);
			long seen = Long.MIN_VALUE;
			for (long end = end(county, seen); end > seen; end = end(county, seen)) {
				for (Link link : links(county, seen, end)) {
					chain.follow(link);
					told.take(link);
					findings.looked();
				}
				seen = end;
			}
			told.finish();
			chain.end(head(county));
		}
	}

	/**
	 * How far the changes after the given one go whose entries fit into memory together,
	 * but at least one; the given one at the end.
	 */
	private long end(String county, long seen) {
		return this.jdbc
			.sql("""
					select coalesce(max(seq) filter (where first or bytes <= :bytes), :seen) from (
					  select seq, row_number() over sequence = 1 as first, sum(octet_length(entry)) over sequence as bytes
					  from (select seq, entry from change where county = :county and seq > :seen order by seq limit :changes) c
					  window sequence as (order by seq)) w""")
			.param("county", county)
			.param("seen", seen)
			.param("changes", CHANGES)
			.param("bytes", BYTES)
			.query(Long.class)
			.single();
	}

	private List<Link> links(String county, long seen, long end) {
		return this.jdbc.sql("""
				select seq, id::text as id, recorded_at, kind, actor::text as actor, entry, hash from change
				where county = ? and seq > ? and seq <= ? order by seq""")
			.params(county, seen, end)
			.query((row, number) -> new Link(county, row.getLong("seq"), row.getString("id"),
					SqlTime.get(row, "recorded_at"), row.getString("kind"), row.getString("actor"),
					row.getBytes("entry"), row.getBytes("hash")))
			.list();
	}

	private Head head(String county) {
		return this.jdbc.sql("select seq, recorded_at, chain from county_head where county = ?")
			.param(county)
			.query((row, number) -> new Head(row.getLong("seq"), SqlTime.get(row, "recorded_at"),
					row.getBytes("chain")))
			.optional()
			.orElse(new Head(0, Instant.EPOCH, new byte[0]));
	}

	/**
	 * A chain as far as it has been followed.
	 */
	private static final class Chain {

		private final String county;

		private final Findings findings;

		private Head end = new Head(0, Instant.MIN, new byte[0]);

		Chain(String county, Findings findings) {
			this.county = county;
			this.findings = findings;
		}

		void follow(Link link) {
			if (link.seq() != this.end.seq() + 1) {
				this.findings.add("%s: change %d follows change %d".formatted(this.county, link.seq(), this.end.seq()));
			}
			if (!link.recordedAt().isAfter(this.end.recordedAt())) {
				this.findings.add("%s is recorded at %s, not after the one before it, at %s".formatted(link.name(),
						link.recordedAt(), this.end.recordedAt()));
			}
			if (!Arrays.equals(link.hash(), Entry.chained(this.end.hash(), link.entry()))) {
				this.findings.add("%s: its hash %s does not follow from its entry and the hash before it"
					.formatted(link.name(), hex(link.hash())));
			}
			this.end = new Head(link.seq(), link.recordedAt(), link.hash());
		}

		void end(Head head) {
			if (head.seq() != this.end.seq() || !head.recordedAt().equals(this.end.recordedAt())
					|| !Arrays.equals(head.hash(), this.end.hash())) {
				this.findings.add("%s: its head is at change %d, %s, hash %s, but its last change is %d, %s, hash %s"
					.formatted(this.county, head.seq(), head.recordedAt(), hex(head.hash()), this.end.seq(),
							this.end.recordedAt(), hex(this.end.hash())));
			}
		}

		private static String hex(byte[] hash) {
			String hex = HexFormat.of().formatHex(hash);
			return hex.isEmpty() ? "none" : hex.substring(0, Math.min(16, hex.length()));
		}

	}

	/**
	 * Where a chain ends.
	 */
	private record Head(long seq, Instant recordedAt, byte[] hash) {
	}

}
