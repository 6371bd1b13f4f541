package county.bigtree.registry.health;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Asks the database whether it is there and has every migration that came with this
 * release, whoever ran them.
 */
@Component
public class CheckReadiness {

	private static final Pattern VERSIONED = Pattern.compile("V(\\d+)__.*\\.sql");

	private final JdbcClient jdbc;

	private final Set<String> shipped;

	CheckReadiness(JdbcClient jdbc) throws IOException {
		this.jdbc = jdbc;
		Resource[] migrations = new PathMatchingResourcePatternResolver()
			.getResources("classpath*:db/migration/V*.sql");
		this.shipped = Arrays.stream(migrations)
			.map((migration) -> VERSIONED.matcher(String.valueOf(migration.getFilename())))
			.filter(Matcher::matches)
			.map((name) -> name.group(1))
			.collect(Collectors.toUnmodifiableSet());
	}

	public Readiness check() {
		try {
			Set<String> applied = new HashSet<>(
					this.jdbc.sql("select version from flyway_schema_history where success and version is not null")
						.query(String.class)
						.list());
			return new Readiness(true, applied.containsAll(this.shipped));
		}
		catch (DataAccessException ex) {
			return new Readiness(false, false);
		}
	}

}
