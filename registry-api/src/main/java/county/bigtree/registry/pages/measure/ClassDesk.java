package county.bigtree.registry.pages.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.domain.classroom.ClassComparison;
import county.bigtree.domain.classroom.GroupReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.points.Score;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.picture.SpreadPicture;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The measuring desk for a class: several groups' readings of one tree side by side. As
 * at the desk, an address holds the whole and nothing is kept.
 */
@Controller
@Hidden
class ClassDesk {

	private final MessageSource messages;

	ClassDesk(MessageSource messages) {
		this.messages = messages;
	}

	@GetMapping("/measure/class")
	@Access(Who.ANYONE)
	String compare(@RequestParam Map<String, String> parameters, Model model) {
		ClassForm form = ClassForm.of(parameters);
		model.addAttribute("form", form);
		model.addAttribute("wrong", form.wrong());
		model.addAttribute("compared",
				form.chosen()
					.keySet()
					.stream()
					.map((figure) -> compared(form, figure))
					.filter(Objects::nonNull)
					.toList());
		model.addAttribute("points", points(form));
		model.addAttribute("read",
				form.groups()
					.stream()
					.flatMap((group) -> group.figures().values().stream())
					.anyMatch((typed) -> typed.reading() != null));
		return "class";
	}

	/** Null where fewer than two groups have read the figure. */
	private @Nullable Compared compared(ClassForm form, String figure) {
		List<GroupReading> readings = new ArrayList<>();
		for (ClassForm.Group group : form.groups()) {
			Reading reading = group.reading(figure);
			if (reading != null) {
				readings.add(new GroupReading(named(group), reading));
			}
		}
		return (readings.size() < 2) ? null : Compared.of(figure, ClassComparison.of(readings));
	}

	private List<GroupPoints> points(ClassForm form) {
		List<GroupPoints> points = new ArrayList<>();
		for (ClassForm.Group group : form.groups()) {
			Readings readings = group.readings();
			if (readings != null) {
				readings.reduce()
					.score()
					.ifPresent((score) -> points.add(new GroupPoints(named(group), readings, score)));
			}
		}
		return points;
	}

	private String named(ClassForm.Group group) {
		return group.name().isEmpty() ? Objects.requireNonNull(this.messages.getMessage("class.group",
				new Object[] { group.number() }, LocaleContextHolder.getLocale())) : group.name();
	}

	/**
	 * One figure as the class found it, and its picture.
	 */
	public record Compared(String figure, ClassComparison comparison, SpreadPicture picture) {

		static Compared of(String figure, ClassComparison comparison) {
			return new Compared(figure, comparison,
					SpreadPicture.of(
							comparison.groups()
								.stream()
								.map((group) -> new SpreadPicture.Found(group.group(), group.estimate().value(),
										group.estimate().standardUncertainty(), group.off()))
								.toList(),
							comparison.median(), comparison.mean().value(), comparison.mean().standardUncertainty()));
		}

		/** Of the figure. */
		public String unit() {
			return this.figure.equals("girth") ? "in" : "ft";
		}

	}

	/**
	 * What one group's three figures come to.
	 */
	public record GroupPoints(String group, Readings readings, Score score) {
	}

}
