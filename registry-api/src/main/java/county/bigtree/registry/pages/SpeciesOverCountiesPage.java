package county.bigtree.registry.pages;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.pages.picture.SmallMultiples;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.ReadChampions;
import county.bigtree.registry.standing.ReadRollUp;
import county.bigtree.registry.standing.StandingQuestion;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * A species in all counties: who is champion where, the points of the champions through
 * time as small pictures on one scale, and the biggest trees of all.
 */
@Controller
@Hidden
class SpeciesOverCountiesPage {

	private static final int BIGGEST = 10;

	/** More of them are no comparison any more. */
	private static final int DRAWN = 24;

	private final SpeciesCatalogue species;

	private final ReadChampions champions;

	private final ReadRollUp rollUp;

	private final RegisterClock clock;

	private final MessageSource messages;

	SpeciesOverCountiesPage(SpeciesCatalogue species, ReadChampions champions, ReadRollUp rollUp, RegisterClock clock,
			MessageSource messages) {
		this.species = species;
		this.champions = champions;
		this.rollUp = rollUp;
		this.clock = clock;
		this.messages = messages;
	}

	@GetMapping("/species/{species}")
	@Access(Who.ANYONE)
	String species(@PathVariable String species, @ModelAttribute("units") Units units, Model model) {
		Words words = new Words(ZoneId.of("UTC"), units);
		List<ReadChampions.InCounty> counties = this.champions.of(species);
		model.addAttribute("species",
				this.species.find(species).orElseThrow(() -> Problem.notFound("No species has this key.")));
		model.addAttribute("words", words);
		model.addAttribute("counties", counties);
		model.addAttribute("standing",
				this.rollUp.read(species, List.of(), new StandingQuestion(null, null, null, BIGGEST)));
		List<SmallMultiples.Series> series = counties.stream()
			.filter((county) -> !county.champions().isEmpty())
			.sorted(Comparator.comparingInt(ReadChampions.InCounty::trees).reversed())
			.limit(DRAWN)
			.map((county) -> series(county, words))
			.toList();
		if (!series.isEmpty()) {
			model.addAttribute("pictures", SmallMultiples.of(series, words.date(this.clock.now())));
		}
		return "species-counties";
	}

	private SmallMultiples.Series series(ReadChampions.InCounty county, Words words) {
		LocalDate today = LocalDate.ofInstant(this.clock.now(), county.zone());
		List<SmallMultiples.Step> steps = county.champions().stream().map((one) -> {
			Instant to = one.to();
			return new SmallMultiples.Step(LocalDate.ofInstant(one.from(), county.zone()),
					(to != null) ? LocalDate.ofInstant(to, county.zone()) : today, one.points().doubleValue());
		}).toList();
		ReadChampions.Champion last = county.champions().get(county.champions().size() - 1);
		String told = this.messages.getMessage("counties.told",
				new Object[] { county.name(), county.champions().size(),
						words.points(county.champions().get(0).points()), words.points(last.points()) },
				LocaleContextHolder.getLocale());
		return new SmallMultiples.Series(county.key(), county.name(), told, steps);
	}

}
