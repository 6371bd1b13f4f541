package county.bigtree.registry.demo;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

import county.bigtree.registry.journal.RegisterClock;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Primary;
import org.springframework.stereotype.Component;

/**
 * The clock by which roles begin and end: while the story is told, that of the story.
 */
@Component
@Primary
@ConditionalOnProperty("registry.demo")
class DemoClock extends Clock {

	private final RegisterClock register;

	private final Clock otherwise = Clock.systemUTC();

	DemoClock(RegisterClock register) {
		this.register = register;
	}

	@Override
	public Instant instant() {
		return this.register.replayed().orElseGet(this.otherwise::instant);
	}

	@Override
	public ZoneId getZone() {
		return ZoneOffset.UTC;
	}

	@Override
	public Clock withZone(ZoneId zone) {
		return Clock.fixed(instant(), zone);
	}

}
