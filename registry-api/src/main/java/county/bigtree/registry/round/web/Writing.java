package county.bigtree.registry.round.web;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.session.PublicAddress;
import county.bigtree.registry.species.SpeciesCatalogue;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/**
 * Words, addresses and the time for what is written to be taken along.
 */
@Component
class Writing {

	private final MessageSource messages;

	private final SpeciesCatalogue species;

	private final PublicAddress address;

	private final RegisterClock clock;

	Writing(MessageSource messages, SpeciesCatalogue species, PublicAddress address, RegisterClock clock) {
		this.messages = messages;
		this.species = species;
		this.address = address;
		this.clock = clock;
	}

	StopWords words(Collection<String> species) {
		return new StopWords(this.messages, this.species.all(species));
	}

	/** Where people find the page: as they reached the service, unless that is named. */
	String address(String path) {
		return this.address.isKnown() ? this.address.of(path)
				: ServletUriComponentsBuilder.fromCurrentContextPath().path(path).build().toUriString();
	}

	/** The same all day, so that what didn't change is the same to the byte. */
	Instant today() {
		return this.clock.now().truncatedTo(ChronoUnit.DAYS);
	}

}
