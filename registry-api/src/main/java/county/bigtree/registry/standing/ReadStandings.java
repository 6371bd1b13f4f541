package county.bigtree.registry.standing;

import java.util.List;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Which species of a county have a ranking.
 */
@Service
public class ReadStandings {

	private final JdbcClient jdbc;

	ReadStandings(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The keys of the species that have, or once had, a ranked tree in the county.
	 * @param after the last key already seen, or the empty text
	 */
	@Transactional(readOnly = true)
	public List<String> species(String county, String after, int limit) {
		return this.jdbc.sql("select species from book where county = ? and species > ? order by species limit ?")
			.params(county, after, limit)
			.query(String.class)
			.list();
	}

	/**
	 * Whether the county is in the register.
	 */
	@Transactional(readOnly = true)
	public boolean knows(String county) {
		return this.jdbc.sql("select exists (select from county where key = ?)")
			.param(county)
			.query(Boolean.class)
			.single();
	}

}
