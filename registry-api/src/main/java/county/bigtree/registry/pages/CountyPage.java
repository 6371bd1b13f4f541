package county.bigtree.registry.pages;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.http.MapTiles;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * A county's standings: every species with its leader, and where these stand.
 */
@Controller
@Hidden
class CountyPage {

	private static final int NEWS = 5;

	private final CountyOfPage counties;

	private final CountyLines lines;

	private final CountyMap map;

	private final MapTiles tiles;

	private final TitleNews news;

	CountyPage(CountyOfPage counties, CountyLines lines, CountyMap map, MapTiles tiles, TitleNews news) {
		this.counties = counties;
		this.lines = lines;
		this.map = map;
		this.tiles = tiles;
		this.news = news;
	}

	@GetMapping("/counties/{county}")
	@Access(Who.ANYONE)
	String county(@PathVariable String county, @RequestParam(defaultValue = "all") String show,
			@RequestParam(required = false) @Nullable String name,
			@RequestParam(required = false) @Nullable String genus, @RequestParam(defaultValue = "1") String page,
			@ModelAttribute("units") Units units, Model model) {
		ReadCounties.County found = this.counties.get(county);
		CountyLines.Listing listing = this.lines.of(county, new CountyLines.Asked(show, said(name), said(genus),
				page.matches("\\d{1,6}") ? Integer.parseInt(page) : 1));
		model.addAttribute("county", found);
		model.addAttribute("words", CountyOfPage.words(found, units));
		model.addAttribute("show", show);
		model.addAttribute("name", said(name));
		model.addAttribute("genus", said(genus));
		model.addAttribute("listing", listing);
		model.addAttribute("map", this.map.of(found, listing, units));
		model.addAttribute("tiles", this.tiles);
		model.addAttribute("feed", "/counties/" + county + "/titles.atom");
		model.addAttribute("changes", this.news.latest(county, NEWS));
		return "county";
	}

	private static @Nullable String said(@Nullable String text) {
		return (text == null || text.isBlank()) ? null : text;
	}

}
