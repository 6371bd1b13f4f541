package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Who was champion of one species in every county that is not for practice, as it was
 * recognised: in two statements for any number of counties.
 */
@Service
public class ReadChampions {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	ReadChampions(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The counties in which trees of the species are ranked, or its title was held, by
	 * name.
	 */
	@Transactional(readOnly = true)
	public List<InCounty> of(String species) {
		Map<String, InCounty> counties = new LinkedHashMap<>();
		this.jdbc.sql("""
				select c.key, c.name, c.time_zone, coalesce(b.trees, 0) as trees from county_now c
				left join book b on b.county = c.key and b.species = :species
				where not c.practice and (b.trees > 0
				  or exists (select from title_span where county = c.key and species = :species))
				order by c.name, c.key""").param("species", species).query((row) -> {
			counties.put(row.getString("key"), new InCounty(row.getString("key"), row.getString("name"),
					ZoneId.of(row.getString("time_zone")), row.getInt("trees"), new ArrayList<>()));
		});
		this.jdbc.sql("""
				select s.county, s.from_at, s.to_at, s.points, case when is_listed(s.tree, :now) then t.tag end as tag
				from title_span s join tree t on t.id = s.tree
				where s.species = :species and s.title = 'champion' order by s.from_at, s.id""")
			.param("species", species)
			.param("now", SqlTime.of(this.clock.now()))
			.query((row) -> {
				InCounty county = counties.get(row.getString("county"));
				if (county != null) {
					county.champions()
						.add(new Champion(row.getString("tag"), SqlTime.get(row, "from_at"), SqlTime.find(row, "to_at"),
								row.getBigDecimal("points")));
				}
			});
		return List.copyOf(counties.values());
	}

	/**
	 * A county.
	 *
	 * @param trees how many are ranked
	 * @param champions oldest first
	 */
	public record InCounty(String key, String name, ZoneId zone, int trees, List<Champion> champions) {

		/** Who is champion today; null where nobody is. */
		public @Nullable Champion present() {
			return this.champions.stream().filter((one) -> one.to() == null).findFirst().orElse(null);
		}

	}

	/**
	 * A time as champion.
	 *
	 * @param tag null where the tree is not listed today, at an owner's wish
	 * @param points what the tree had when it took the title
	 */
	public record Champion(@Nullable String tag, Instant from, @Nullable Instant to, BigDecimal points) {
	}

}
