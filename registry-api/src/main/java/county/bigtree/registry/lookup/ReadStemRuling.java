package county.bigtree.registry.lookup;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What was last ruled on the stems of a tree.
 */
@Service
public class ReadStemRuling {

	private final JdbcClient jdbc;

	ReadStemRuling(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@Transactional(readOnly = true)
	public Optional<StemRuling> of(UUID tree) {
		return this.jdbc
			.sql("""
					select r.form, r.union_height_feet, (select body from text_body where id = r.scored_stem) as scored_stem,
					  (select body from text_body where id = r.measure_at) as measure_at
					from stem_ruling r where r.tree = ? order by r.recorded_at desc limit 1""")
			.param(tree)
			.query((row, number) -> new StemRuling(row.getString("form"), row.getBigDecimal("union_height_feet"),
					row.getString("scored_stem"), row.getString("measure_at")))
			.optional();
	}

	/**
	 * A ruling. Its words are a coordinator's, for those who go to the tree.
	 *
	 * @param form single, forked-above, forked-below, several or fused
	 */
	public record StemRuling(String form, @Nullable BigDecimal unionHeightFeet, @Nullable String scoredStem,
			@Nullable String measureAt) {
	}

}
