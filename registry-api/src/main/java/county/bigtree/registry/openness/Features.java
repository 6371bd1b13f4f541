package county.bigtree.registry.openness;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import county.bigtree.domain.place.Position;
import county.bigtree.registry.lookup.ReadScores.ScoreOfDay;
import county.bigtree.registry.lookup.TreeSummary;
import org.jspecify.annotations.Nullable;

/**
 * Features of GeoJSON (RFC 7946). Where a tree stands is a point as it is shown, with how
 * far off that may be among the properties; there is none where only the county is shown.
 */
public final class Features {

	private Features() {
	}

	/**
	 * A tree as a feature.
	 */
	public static Map<String, @Nullable Object> of(OpenTree open) {
		Map<String, @Nullable Object> feature = new LinkedHashMap<>();
		feature.put("type", "Feature");
		feature.put("id", open.tree().id());
		feature.put("geometry", point(open.tree().shown()));
		feature.put("properties", properties(open));
		return feature;
	}

	static @Nullable Map<String, Object> point(Optional<Position> shown) {
		return shown.map(Features::point).orElse(null);
	}

	/** Always in this order, so that the same file is the same to the byte. */
	private static Map<String, Object> point(Position place) {
		Map<String, Object> point = new LinkedHashMap<>();
		point.put("type", "Point");
		point.put("coordinates",
				List.of(CountyInCsv.degrees(place.longitude()), CountyInCsv.degrees(place.latitude())));
		return point;
	}

	private static Map<String, @Nullable Object> properties(OpenTree open) {
		TreeSummary tree = open.tree();
		Map<String, @Nullable Object> properties = new LinkedHashMap<>();
		properties.put("tag", tree.tag());
		properties.put("popularName", tree.popularName());
		properties.put("county", tree.county());
		properties.put("species", tree.species());
		properties.put("scientificName", open.species().scientificName());
		properties.put("commonName", open.species().commonName());
		properties.put("place", open.shown().code());
		properties.put("accuracyMetres",
				tree.shown().map((place) -> BigDecimal.valueOf(place.accuracyMetres())).orElse(null));
		properties.put("condition", tree.condition());
		properties.put("lastSeenOn", text(tree.lastSeenOn()));
		properties.put("eligible", tree.eligible());
		addStanding(properties, tree.score());
		addFigures(properties, open.present());
		properties.put("title", tree.title());
		properties.put("titleSince", text(tree.titleSince()));
		return properties;
	}

	private static void addStanding(Map<String, @Nullable Object> properties, TreeSummary.@Nullable Standing standing) {
		properties.put("rank", (standing != null) ? standing.rank() : null);
		properties.put("points", (standing != null) ? standing.points() : null);
		properties.put("pointsStandardUncertainty",
				(standing != null) ? CountyInCsv.rounded(standing.pointsStandardUncertainty()) : null);
		properties.put("measuredOn", (standing != null) ? text(standing.measured()) : null);
		properties.put("effectiveOn", (standing != null) ? text(standing.measuredOn()) : null);
	}

	private static void addFigures(Map<String, @Nullable Object> properties, @Nullable ScoreOfDay score) {
		properties.put("girthInches", (score != null) ? CountyInCsv.rounded(score.girthInches()) : null);
		properties.put("heightFeet", (score != null) ? CountyInCsv.rounded(score.heightFeet()) : null);
		properties.put("crownSpreadFeet", (score != null) ? CountyInCsv.rounded(score.crownFeet()) : null);
	}

	static @Nullable String text(@Nullable Object value) {
		return (value != null) ? value.toString() : null;
	}

}
