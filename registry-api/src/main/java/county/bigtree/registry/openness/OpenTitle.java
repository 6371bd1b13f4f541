package county.bigtree.registry.openness;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;

/**
 * A title over a span of time, with what of its tree may be shown today.
 *
 * @param row its place in the order of recognition
 * @param number which of those that began at one instant it is, counted from 1
 * @param tree null, like the tag, where the tree is not listed today
 * @param points what the tree had when it took the title
 * @param shown where the tree is shown to stand
 */
public record OpenTitle(long row, int number, String county, String countyName, String species, String scientificName,
		String commonName, @Nullable UUID tree, @Nullable String tag, String title, Instant from, @Nullable Instant to,
		BigDecimal points, LocalDate measuredOn, String began, @Nullable String ended, Optional<Position> shown) {

	private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss.SSSSSS'Z'")
		.withZone(ZoneOffset.UTC);

	/**
	 * Says which title it is without saying which tree's, so that it stays the same for
	 * ever.
	 */
	public String id() {
		return "%s.%s.%s.%d".formatted(this.county, this.species, STAMP.format(this.from), this.number);
	}

	/** As a feature of GeoJSON. */
	public Map<String, @Nullable Object> feature() {
		Map<String, @Nullable Object> feature = new LinkedHashMap<>();
		feature.put("type", "Feature");
		feature.put("id", id());
		feature.put("geometry", Features.point(this.shown));
		feature.put("properties", properties());
		return feature;
	}

	private Map<String, @Nullable Object> properties() {
		Map<String, @Nullable Object> properties = new LinkedHashMap<>();
		properties.put("county", this.county);
		properties.put("species", this.species);
		properties.put("scientificName", this.scientificName);
		properties.put("commonName", this.commonName);
		properties.put("title", this.title);
		properties.put("listed", this.tree != null);
		properties.put("tree", Features.text(this.tree));
		properties.put("tag", this.tag);
		properties.put("accuracyMetres",
				this.shown.map((place) -> BigDecimal.valueOf(place.accuracyMetres())).orElse(null));
		properties.put("from", this.from.toString());
		properties.put("to", Features.text(this.to));
		properties.put("began", this.began);
		properties.put("ended", this.ended);
		properties.put("points", this.points);
		properties.put("effectiveOn", this.measuredOn.toString());
		return properties;
	}

}
