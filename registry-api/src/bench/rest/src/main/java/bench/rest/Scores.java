package bench.rest;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.springframework.data.domain.Pageable;
import org.springframework.data.jpa.repository.EntityGraph;
import org.springframework.data.repository.Repository;
import org.springframework.data.rest.core.annotation.RepositoryRestResource;
import org.springframework.data.rest.core.annotation.RestResource;
import org.springframework.data.rest.core.config.Projection;

/**
 * A list and no page, so that nothing is counted; trees and measurements come by the same
 * statement.
 */
@RepositoryRestResource(excerptProjection = Scores.Row.class)
public interface Scores extends Repository<Score, Long> {

	@RestResource(path = "standing", rel = "standing")
	@EntityGraph(attributePaths = { "tree", "measurement" })
	List<Score> findByCountyAndSpeciesAndEndsOnIsNullAndWithdrawnAtIsNullOrderByPointsDescTreeIdAsc(String county,
			String species, Pageable page);

	@Projection(name = "row", types = Score.class)
	interface Row {

		BigDecimal getPoints();

		BigDecimal getPointsU();

		LocalDate getMeasuredOn();

		LocalDate getLostOn();

		boolean isCarriedOver();

		OfTree getTree();

		OfMeasurement getMeasurement();

	}

	interface OfTree {

		UUID getId();

		String getTag();

		String getTitle();

	}

	interface OfMeasurement {

		BigDecimal getGirthInches();

		BigDecimal getHeightFeet();

		BigDecimal getCrownFeet();

	}

}
