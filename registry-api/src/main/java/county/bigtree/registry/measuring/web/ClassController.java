package county.bigtree.registry.measuring.web;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

import county.bigtree.domain.classroom.ClassComparison;
import county.bigtree.domain.classroom.GroupReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Holds the readings of one tree by several groups of a class against each other, and
 * records nothing.
 */
@RestController
@RequestMapping("/api/v1/measuring")
@Tag(name = "Measuring")
class ClassController {

	@PostMapping("/class")
	@Access(Who.ANYONE)
	@Unkeyed
	@Operation(operationId = "compareClass",
			summary = "How the readings of one tree by several groups stand to each other, and which is off")
	ClassAnswer compare(@Valid @RequestBody ClassBody body) {
		FigureOfClass girth = compared(body, "girth", ClassBody.GroupBody::girth);
		FigureOfClass height = compared(body, "height", ClassBody.GroupBody::height);
		FigureOfClass crown = compared(body, "crown", ClassBody.GroupBody::crown);
		if (girth == null && height == null && crown == null) {
			throw Problem.invalid("#/groups", "missing", "must hold one figure at least that two groups have read");
		}
		return new ClassAnswer(girth, height, crown);
	}

	/** Null where fewer than two groups have read the figure. */
	private static @Nullable FigureOfClass compared(ClassBody body, String figure,
			Function<ClassBody.GroupBody, @Nullable Reading> reading) {
		List<GroupReading> readings = new ArrayList<>();
		for (int i = 0; i < body.groups().size(); i++) {
			ClassBody.GroupBody group = body.groups().get(i);
			Reading read = reading.apply(group);
			if (read != null) {
				requireFigure(read, "groups/%d/%s".formatted(i, figure));
				readings.add(new GroupReading(group.group(), read));
			}
		}
		return (readings.size() < 2) ? null : FigureOfClass.of(ClassComparison.of(readings));
	}

	private static void requireFigure(Reading reading, String path) {
		try {
			reading.estimate();
		}
		catch (InvalidReadingException ex) {
			throw ex.within(path);
		}
	}

	/** What each figure that two groups or more have read comes to. */
	record ClassAnswer(@Nullable FigureOfClass girth, @Nullable FigureOfClass height, @Nullable FigureOfClass crown) {
	}

}
