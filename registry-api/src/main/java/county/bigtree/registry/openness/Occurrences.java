package county.bigtree.registry.openness;

import java.math.BigDecimal;
import java.util.List;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.openness.DarwinTable.Column;
import county.bigtree.registry.species.Species;
import org.jspecify.annotations.Nullable;

/**
 * Trees as Darwin Core occurrences: each the tree as it was last measured for the score
 * it has. What is shown less exactly than it is known says so.
 */
final class Occurrences {

	private static final String HERE = "The coordinates are the middle of a cell of a grid of about one kilometre.";

	private static final String NONE = "No coordinates are given; the tree stands somewhere in the county.";

	private Occurrences() {
	}

	static DarwinTable<OpenTree> table(ReadCounties.County county, OpenDataSettings settings) {
		return new DarwinTable<>("occurrence.txt", DarwinTable.DARWIN_CORE + "Occurrence",
				List.of(Column.darwin("occurrenceID", Occurrences::id),
						new Column<>(DarwinTable.DUBLIN_CORE + "license", (tree) -> settings.license()),
						Column.darwin("institutionCode", (tree) -> county.key()),
						Column.darwin("collectionCode", (tree) -> "trees"),
						Column.darwin("catalogNumber", (tree) -> tree.tree().tag()),
						Column.darwin("basisOfRecord", (tree) -> "HumanObservation"),
						Column.darwin("occurrenceStatus", (tree) -> "present"),
						Column.darwin("organismID", Occurrences::id),
						Column.darwin("organismName", (tree) -> tree.tree().popularName()),
						Column.darwin("eventDate", Occurrences::measured),
						Column.darwin("country", (tree) -> settings.country()),
						Column.darwin("stateProvince", (tree) -> county.state()),
						Column.darwin("county", (tree) -> county.name()),
						Column.darwin("decimalLatitude", Occurrences::latitude),
						Column.darwin("decimalLongitude", Occurrences::longitude),
						Column.darwin("geodeticDatum",
								(tree) -> (tree.shown() != Disclosure.COUNTY) ? "EPSG:4326" : null),
						Column.darwin("coordinateUncertaintyInMeters", Occurrences::uncertainty),
						Column.darwin("dataGeneralizations", (tree) -> switch (tree.shown()) {
							case EXACT -> null;
							case NEARBY -> HERE;
							case COUNTY -> NONE;
						}),
						Column.darwin("informationWithheld",
								(tree) -> (tree.shown() != Disclosure.EXACT) ? "The exact place is withheld." : null),
						Column.darwin("taxonID", (tree) -> tree.species().key()),
						Column.darwin("scientificName", (tree) -> tree.species().scientificName()),
						Column.darwin("kingdom", (tree) -> "Plantae"),
						Column.darwin("genus", (tree) -> tree.species().genus()),
						Column.darwin("specificEpithet", (tree) -> tree.species().epithet()),
						Column.darwin("infraspecificEpithet", (tree) -> tree.species().infraspecificName()),
						Column.darwin("taxonRank", (tree) -> rank(tree.species())),
						Column.darwin("vernacularName", (tree) -> tree.species().commonName()),
						Column.darwin("occurrenceRemarks", (tree) -> "Condition: " + tree.tree().condition())));
	}

	/** A name for ever, of RFC 9562's form. */
	static String id(OpenTree tree) {
		return "urn:uuid:" + tree.tree().id();
	}

	private static @Nullable Object measured(OpenTree tree) {
		TreeSummary.Standing standing = tree.tree().score();
		return (standing != null) ? standing.measured() : null;
	}

	private static @Nullable Object latitude(OpenTree tree) {
		return tree.tree().shown().map((place) -> CountyInCsv.degrees(place.latitude())).orElse(null);
	}

	private static @Nullable Object longitude(OpenTree tree) {
		return tree.tree().shown().map((place) -> CountyInCsv.degrees(place.longitude())).orElse(null);
	}

	private static @Nullable Object uncertainty(OpenTree tree) {
		return tree.tree().shown().map((place) -> BigDecimal.valueOf(place.accuracyMetres())).orElse(null);
	}

	private static String rank(Species species) {
		if (species.genusOnly()) {
			return "genus";
		}
		String rank = species.infraspecificRank();
		if (rank == null) {
			return "species";
		}
		return rank.equals("var.") ? "variety" : "subspecies";
	}

}
