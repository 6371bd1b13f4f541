package county.bigtree.registry.edition;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads the editions of counties.
 */
@Service
public class Editions {

	private static final String EDITIONS = """
			select e.id, e.county, e.name, e.filings_by, e.grace_days, e.closes_on, e.time_zone, e.recorded_at as announced_at,
			  p.recorded_at as published_at, p.known_at, p.head_seq, p.head_chain, p.list_sha256, p.csv_sha256, p.pdf_sha256,
			  (select count(*) from edition_erratum where edition = e.id)::int as errata
			from edition e left join edition_publication p on p.edition = e.id
			""";

	private final JdbcClient jdbc;

	Editions(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** The editions of a county, the latest day first. */
	@Transactional(readOnly = true)
	public List<Edition> of(String county) {
		return this.jdbc.sql(EDITIONS + "where e.county = ? order by e.closes_on desc, e.recorded_at desc")
			.param(county)
			.query(Editions::edition)
			.list();
	}

	/**
	 * The edition with this id.
	 * @throws Problem of not being found
	 */
	@Transactional(readOnly = true)
	public Edition get(UUID id) {
		return this.jdbc.sql(EDITIONS + "where e.id = ?")
			.param(id)
			.query(Editions::edition)
			.optional()
			.orElseThrow(() -> Problem.notFound("No edition has this id."));
	}

	/** The edition of this name in the county. */
	Optional<Edition> find(String county, String name) {
		return this.jdbc.sql(EDITIONS + "where e.county = ? and e.name = ?")
			.params(county, name)
			.query(Editions::edition)
			.optional();
	}

	/** The last one published in the same county of an earlier day. */
	@Transactional(readOnly = true)
	public Optional<Edition> before(Edition edition) {
		return this.jdbc
			.sql(EDITIONS
					+ "where e.county = ? and p.edition is not null and e.closes_on < ? order by e.closes_on desc, "
					+ "p.recorded_at desc limit 1")
			.params(edition.county(), edition.closesOn())
			.query(Editions::edition)
			.optional();
	}

	/** The errata of an edition, the earliest first. */
	@Transactional(readOnly = true)
	public List<Erratum> errata(UUID edition) {
		return this.jdbc.sql("""
				select r.id, (r.recorded_at at time zone e.time_zone)::date as noted_on, r.tree, w.body as text
				from edition_erratum r join edition e on e.id = r.edition left join text_body w on w.id = r.words
				where r.edition = ? order by r.recorded_at""").param(edition).query(Erratum.class).list();
	}

	private static Edition edition(ResultSet row, int number) throws SQLException {
		Edition.Publication publication = publication(row);
		int errata = row.getInt("errata");
		return new Edition(row.getObject("id", UUID.class), row.getString("county"), row.getString("name"),
				row.getObject("filings_by", LocalDate.class), row.getInt("grace_days"),
				row.getObject("closes_on", LocalDate.class), row.getString("time_zone"),
				SqlTime.get(row, "announced_at"), publication, errata, 1L + ((publication != null) ? 1 : 0) + errata);
	}

	private static Edition.@Nullable Publication publication(ResultSet row) throws SQLException {
		return (row.getObject("published_at") == null) ? null
				: new Edition.Publication(SqlTime.get(row, "published_at"), SqlTime.get(row, "known_at"),
						row.getLong("head_seq"), hex(row.getBytes("head_chain")), hex(row.getBytes("list_sha256")),
						hex(row.getBytes("csv_sha256")),
						(row.getBytes("pdf_sha256") != null) ? hex(row.getBytes("pdf_sha256")) : null);
	}

	private static String hex(byte[] bytes) {
		return HexFormat.of().formatHex(bytes);
	}

	/**
	 * What turned out wrong in an edition.
	 *
	 * @param tree which it concerns, if it is one
	 * @param text what is wrong and what is right; null where the words were erased
	 */
	public record Erratum(UUID id, LocalDate notedOn, @Nullable UUID tree, @Nullable String text) {
	}

}
