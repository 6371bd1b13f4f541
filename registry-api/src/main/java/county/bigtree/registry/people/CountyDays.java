package county.bigtree.registry.people;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Days as instants: those of a county in its time zone, those of the service in UTC.
 */
@Component
class CountyDays {

	private final JdbcClient jdbc;

	CountyDays(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Instant start(LocalDate day, @Nullable String county) {
		return day.atStartOfDay(zone(county)).toInstant();
	}

	LocalDate today(Instant now, @Nullable String county) {
		return LocalDate.ofInstant(now, zone(county));
	}

	private ZoneId zone(@Nullable String county) {
		return (county == null) ? ZoneOffset.UTC
				: this.jdbc.sql("select time_zone from county_now where key = ?")
					.param(county)
					.query(String.class)
					.optional()
					.map(ZoneId::of)
					.orElse(ZoneOffset.UTC);
	}

}
