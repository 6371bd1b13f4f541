package county.bigtree.registry.signoff;

import java.util.List;

import county.bigtree.registry.measurement.MeasurementBody;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * A verifier's word on a measurement.
 *
 * @param verdict confirmed, corrected or not-confirmed
 * @param measurement the verifier's own full measurement, which then counts
 * @param declares what the verifier declares of their independence
 */
public record SignOffBody(@NotNull @Pattern(regexp = "confirmed|corrected|not-confirmed") String verdict,
		@Nullable MeasurementBody measurement, @Nullable @Size(max = 10) List<String> declares,
		@Nullable @Size(max = 2000) String remarks) {

	/**
	 * The same with these checks of its own measurement confirmed.
	 */
	public SignOffBody confirming(List<String> checks) {
		return (this.measurement == null) ? this
				: new SignOffBody(this.verdict, this.measurement.confirming(checks), this.declares, this.remarks);
	}

}
