package county.bigtree.registry.naming;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;

/**
 * The names of species and counties by their keys, each looked up once. What has no name
 * keeps its key. For one page or account, by one thread.
 */
public final class Names {

	private final SpeciesCatalogue catalogue;

	private final ReadCounties counties;

	private final Map<String, Optional<Species>> species = new HashMap<>();

	private final Map<String, String> countyNames = new HashMap<>();

	Names(SpeciesCatalogue catalogue, ReadCounties counties) {
		this.catalogue = catalogue;
		this.counties = counties;
	}

	/** Looks up those of a list at once. */
	public Names of(Collection<? extends @Nullable String> keys) {
		List<String> unknown = keys.stream()
			.filter(Objects::nonNull)
			.distinct()
			.filter((key) -> !this.species.containsKey(key))
			.collect(Collectors.toList());
		if (!unknown.isEmpty()) {
			Map<String, Species> found = this.catalogue.all(unknown);
			unknown.forEach((key) -> this.species.put(key, Optional.ofNullable(found.get(key))));
		}
		return this;
	}

	/** The common name; empty for none. */
	public String species(@Nullable String key) {
		return (key == null) ? "" : find(key).map(Species::commonName).orElse(key);
	}

	public String scientific(@Nullable String key) {
		return (key == null) ? "" : find(key).map(Species::scientificName).orElse(key);
	}

	public String county(@Nullable String key) {
		return (key == null) ? "" : this.countyNames.computeIfAbsent(key,
				(one) -> this.counties.find(one).map(ReadCounties.County::name).orElse(one));
	}

	private Optional<Species> find(String key) {
		return this.species.computeIfAbsent(key, this.catalogue::find);
	}

}
