package county.bigtree.registry.check;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.check.Earlier;
import county.bigtree.domain.check.Sizes;
import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Finds the latest measurement of a tree that counts.
 */
@Component
class EarlierVisits {

	private static final String LATEST = """
			select m.measured_on, r.girth_inches, r.girth_u, r.height_feet, r.height_u, r.crown_feet, r.crown_u,
			  case when s.lost_on is null then coalesce(h.measured_on, m.measured_on) end as height_on,
			  case when s.lost_on is null then coalesce(c.measured_on, m.measured_on) end as crown_on
			from score s join measurement m on m.id = s.measurement join reduction r on r.measurement = m.id
			left join measurement h on h.id = s.height_from left join measurement c on c.id = s.crown_from
			where s.tree = ? and s.withdrawn_at is null and s.ends_on is null order by r.version desc limit 1""";

	private final JdbcClient jdbc;

	EarlierVisits(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Optional<Earlier> of(UUID tree) {
		return this.jdbc.sql(LATEST).param(tree).query(Counting.class).optional().map(Counting::earlier);
	}

	private record Counting(LocalDate measuredOn, @Nullable Double girthInches, @Nullable Double girthU,
			@Nullable Double heightFeet, @Nullable Double heightU, @Nullable Double crownFeet, @Nullable Double crownU,
			@Nullable LocalDate heightOn, @Nullable LocalDate crownOn) {

		Earlier earlier() {
			return new Earlier(new Sizes(estimate(this.girthInches, this.girthU),
					estimate(this.heightFeet, this.heightU), estimate(this.crownFeet, this.crownU)), this.measuredOn,
					this.heightOn, this.crownOn);
		}

		private static @Nullable Estimate estimate(@Nullable Double value, @Nullable Double uncertainty) {
			return (value != null && uncertainty != null) ? new Estimate(value, uncertainty) : null;
		}

	}

}
