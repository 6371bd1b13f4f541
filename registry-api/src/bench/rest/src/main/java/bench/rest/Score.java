package bench.rest;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import org.hibernate.annotations.Immutable;

@Entity
@Immutable
public class Score {

	@Id
	private Long id;

	private String county;

	private String species;

	@ManyToOne(fetch = FetchType.LAZY)
	@JoinColumn(name = "tree")
	private Tree tree;

	@ManyToOne(fetch = FetchType.LAZY)
	@JoinColumn(name = "measurement")
	private Measurement measurement;

	private BigDecimal points;

	@Column(name = "points_u")
	private BigDecimal pointsU;

	private LocalDate measuredOn;

	private LocalDate lostOn;

	private boolean carriedOver;

	private LocalDate endsOn;

	private Instant withdrawnAt;

	public Long getId() {
		return this.id;
	}

	public String getCounty() {
		return this.county;
	}

	public String getSpecies() {
		return this.species;
	}

	public Tree getTree() {
		return this.tree;
	}

	public Measurement getMeasurement() {
		return this.measurement;
	}

	public BigDecimal getPoints() {
		return this.points;
	}

	public BigDecimal getPointsU() {
		return this.pointsU;
	}

	public LocalDate getMeasuredOn() {
		return this.measuredOn;
	}

	public LocalDate getLostOn() {
		return this.lostOn;
	}

	public boolean isCarriedOver() {
		return this.carriedOver;
	}

}
