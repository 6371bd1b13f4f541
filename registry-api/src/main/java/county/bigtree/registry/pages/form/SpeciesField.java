package county.bigtree.registry.pages.form;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

import county.bigtree.registry.naming.SpeciesByName;
import county.bigtree.registry.species.Species;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * Reads a field in which a species is named in any way, if that leads to one.
 */
@Component
public class SpeciesField {

	private final SpeciesByName species;

	private final MessageSource messages;

	SpeciesField(SpeciesByName species, MessageSource messages) {
		this.species = species;
		this.messages = messages;
	}

	/** The key; where the name leads to none or to several the field is refused. */
	public Optional<String> key(Form form, String field, String name) {
		if (name.isEmpty()) {
			return Optional.empty();
		}
		List<Species> found = this.species.find(name);
		if (found.size() == 1) {
			return Optional.of(found.get(0).key());
		}
		form.refuse(field,
				found.isEmpty() ? say("decide.species.unknown", name)
						: say("decide.species.several",
								found.stream()
									.map((one) -> "%s (%s)".formatted(one.commonName(), one.scientificName()))
									.collect(Collectors.joining(", "))));
		return Optional.empty();
	}

	private String say(String message, String about) {
		return this.messages.getMessage(message, new Object[] { about }, Locale.US);
	}

}
