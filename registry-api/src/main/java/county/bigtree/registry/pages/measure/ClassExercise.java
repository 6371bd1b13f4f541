package county.bigtree.registry.pages.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.domain.classroom.ClassComparison;
import county.bigtree.domain.classroom.GroupReading;
import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.WorkingLine;
import county.bigtree.domain.points.Score;

/**
 * What a class works out by hand, and what it comes to by the same arithmetic as that of
 * the register. The readings are invented: one group has entered a diameter as a girth.
 *
 * @param examples one for girth, height and crown
 * @param girths what four groups read around one stem, in inches
 * @param compared the same, held against each other
 */
public record ClassExercise(List<WorkedExample> examples, List<String> girths, ClassComparison compared) {

	private static final List<String> GIRTHS = List.of("150.5", "152", "48.2", "151.25");

	/** The exercise, the same each time. */
	public static ClassExercise of() {
		List<GroupReading> groups = new ArrayList<>();
		for (String girth : GIRTHS) {
			Reading reading = TypedReading.of(Kind.GIRTH, "girth", Map.of("girth", "tape", "girth.girth", girth))
				.reading();
			groups.add(new GroupReading(String.valueOf((char) ('A' + groups.size())), Objects.requireNonNull(reading)));
		}
		return new ClassExercise(List.of(WorkedExample.of(MethodForm.STRING_STICKS), WorkedExample.of(MethodForm.STICK),
				WorkedExample.of(MethodForm.AXES)), GIRTHS, ClassComparison.of(groups));
	}

	/** How the points of the three figures are found. */
	public List<WorkingLine> working() {
		return readings().working();
	}

	/** What they come to. */
	public Score score() {
		return readings().reduce().score().orElseThrow();
	}

	private Readings readings() {
		return new Readings((GirthReading) this.examples.get(0).reading(),
				(HeightReading) this.examples.get(1).reading(), (CrownReading) this.examples.get(2).reading());
	}

}
