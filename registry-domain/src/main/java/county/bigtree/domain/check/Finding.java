package county.bigtree.domain.check;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * What one check has to say on one filing.
 *
 * @param code of the check, stable, for programs and for the answer to its question
 * @param severity what it asks
 * @param detail one sentence for a volunteer
 * @param figures the numbers it used, by name, in the unit the name ends with; texts
 * where the figure is a unit or a name
 * @param extraordinary whether the filing is what the register looks for, and should be
 * looked at first
 */
public record Finding(String code, Severity severity, String detail, Map<String, Object> figures,
		boolean extraordinary) {

	public Finding {
		figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
	}

	static Finding note(String code, String detail, Numbers numbers) {
		return new Finding(code, Severity.NOTE, detail, numbers.figures, false);
	}

	static Finding question(String code, String detail, Numbers numbers) {
		return new Finding(code, Severity.QUESTION, detail, numbers.figures, false);
	}

	static Finding stop(String code, String detail, Numbers numbers) {
		return new Finding(code, Severity.STOP, detail, numbers.figures, false);
	}

	Finding asExtraordinary() {
		return new Finding(this.code, this.severity, this.detail, this.figures, true);
	}

	/** The same for a list that asks nothing of anybody: a stop stays a stop. */
	public Finding asNote() {
		return (this.severity == Severity.QUESTION)
				? new Finding(this.code, Severity.NOTE, this.detail, this.figures, this.extraordinary) : this;
	}

	/**
	 * Collects the numbers of a finding, to two decimals.
	 */
	static final class Numbers {

		private static final double HUNDREDTHS = 100;

		private final Map<String, Object> figures = new LinkedHashMap<>();

		Numbers with(String name, double value) {
			this.figures.put(name, Math.round(value * HUNDREDTHS) / HUNDREDTHS);
			return this;
		}

		Numbers with(String name, Object text) {
			this.figures.put(name, Objects.toString(text));
			return this;
		}

	}

}
