package bench.rest;

import java.math.BigDecimal;
import java.util.UUID;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import org.hibernate.annotations.Formula;
import org.hibernate.annotations.Immutable;

@Entity
@Immutable
public class Measurement {

	@Id
	private UUID id;

	@Formula("(select r.girth_inches from reduction r where r.measurement = id order by r.version desc limit 1)")
	private BigDecimal girthInches;

	@Formula("(select r.height_feet from reduction r where r.measurement = id order by r.version desc limit 1)")
	private BigDecimal heightFeet;

	@Formula("(select r.crown_feet from reduction r where r.measurement = id order by r.version desc limit 1)")
	private BigDecimal crownFeet;

	public UUID getId() {
		return this.id;
	}

	public BigDecimal getGirthInches() {
		return this.girthInches;
	}

	public BigDecimal getHeightFeet() {
		return this.heightFeet;
	}

	public BigDecimal getCrownFeet() {
		return this.crownFeet;
	}

}
