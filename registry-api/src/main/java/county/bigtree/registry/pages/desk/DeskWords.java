package county.bigtree.registry.pages.desk;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.naming.Names;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Words;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;

/**
 * Puts into words what the API says: its days and instants in the county's time zone, its
 * keys of species by their names.
 */
public final class DeskWords {

	private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm", Locale.US);

	private static final int DAY_LENGTH = 10;

	/** The fifth place of a latitude is about a metre. */
	private static final int PLACES = 5;

	private static final double A_KILOMETRE = 1000;

	private static final double A_FOOT = 0.3048;

	private static final double A_MILE = 5280 * A_FOOT;

	private final Words words;

	private final MessageSource messages;

	private final Names names;

	private final Instant now;

	/** With the moment at which the page is made. */
	public DeskWords(ZoneId zone, Units units, MessageSource messages, Names names, Instant now) {
		this.names = names;
		this.words = new Words(zone, units);
		this.messages = messages;
		this.now = now;
	}

	/** A day or an instant; empty for none. */
	public String day(@Nullable String day) {
		if (day == null) {
			return "";
		}
		return (day.length() <= DAY_LENGTH) ? this.words.known(KnownDay.parse(day))
				: this.words.day(Instant.parse(day));
	}

	/** An instant to the minute. */
	public String time(String instant) {
		return TIME.format(Instant.parse(instant).atZone(this.words.zone()));
	}

	/** Today in the county. */
	public LocalDate today() {
		return this.words.date(this.now);
	}

	/** For how long something has waited. */
	public String waited(String since) {
		long days = Duration.between(Instant.parse(since), this.now).toDays();
		return say("desk.waited", Math.max(0, days));
	}

	public String points(@Nullable BigDecimal points) {
		return (points != null) ? this.words.points(points) : say("figure.none");
	}

	/** With twice its standard uncertainty. */
	public String points(@Nullable BigDecimal points, @Nullable BigDecimal standardUncertainty) {
		return (points == null || standardUncertainty == null) ? points(points)
				: points(points) + " ± " + this.words.points(standardUncertainty.doubleValue());
	}

	public String girth(@Nullable BigDecimal inches, @Nullable BigDecimal standardUncertainty) {
		return (inches == null || standardUncertainty == null) ? say("figure.none")
				: this.words.girth(inches, standardUncertainty) + " " + this.words.units().girthUnit();
	}

	public String length(@Nullable BigDecimal feet, @Nullable BigDecimal standardUncertainty) {
		return (feet == null || standardUncertainty == null) ? say("figure.none")
				: this.words.length(feet, standardUncertainty) + " " + this.words.units().lengthUnit();
	}

	/** How far something is. */
	public String distance(double metres) {
		if (this.words.units().metric()) {
			return (metres < A_KILOMETRE) ? say("distance.metres", String.valueOf(Math.round(metres)))
					: say("distance.kilometres", "%.1f".formatted(metres / A_KILOMETRE));
		}
		return (metres < A_MILE / 4) ? say("distance.feet", String.valueOf(Math.round(metres / A_FOOT)))
				: say("distance.miles", "%.1f".formatted(metres / A_MILE));
	}

	/** A number without needless noughts. */
	public String number(@Nullable BigDecimal value) {
		if (value == null) {
			return say("figure.none");
		}
		BigDecimal rounded = value.setScale(PLACES, RoundingMode.HALF_UP).stripTrailingZeros();
		return rounded.setScale(Math.max(0, rounded.scale())).toPlainString();
	}

	/** A probability in whole percent, never as if it were certain. */
	public String percent(BigDecimal probability) {
		long percent = Math.round(probability.doubleValue() * 100);
		return String.valueOf(Math.max(1, Math.min(percent, 99)));
	}

	/** A difference, with its sign. */
	public String signed(@Nullable BigDecimal value) {
		return (value != null && value.signum() > 0) ? "+" + number(value) : number(value).replace('-', '−');
	}

	/** Looks up at once all species that the entries of a list name. */
	void know(List<Map<String, @Nullable Object>> list) {
		this.names.of(list.stream().map((one) -> (one.get("species") instanceof String key) ? key : null).toList());
	}

	/** The common name. */
	public String species(@Nullable String key) {
		return this.names.species(key);
	}

	public String scientific(@Nullable String key) {
		return this.names.scientific(key);
	}

	/** What a verifier declared, in words of ours or of theirs. */
	public String declared(String declaration) {
		String named = find("sign-off.declared." + declaration);
		return (named != null) ? named : declaration;
	}

	/** How a reading was taken. */
	public String method(String method) {
		String named = find("method." + method);
		return (named != null) ? named : method;
	}

	/** An entry of a reading. */
	public String entry(String entry) {
		String named = find("measure.field." + entry);
		return (named != null) ? named : entry;
	}

	/** The status of something that waits: a letter's is what it is about. */
	public String status(String kind, String status) {
		String named = find(switch (kind) {
			case "nomination" -> "desk.nomination.status.";
			case "measurement" -> "desk.measurement.status.";
			case "sign-off" -> "verdict.";
			case "letter" -> "desk.letter.about.";
			case "relocation" -> "relocation.status.";
			case "photo" -> "photo.shows.";
			default -> "condition.";
		} + status);
		return (named != null) ? named : status;
	}

	/** The name of another county. */
	public String county(String key) {
		return this.names.county(key);
	}

	/** A message, with whatever it is about. */
	public String say(String key, Object... about) {
		return this.messages.getMessage(key, about, Locale.US);
	}

	/** A message, if there is one. */
	@Nullable String find(String key) {
		return this.messages.getMessage(key, null, null, Locale.US);
	}

	/** The messages of these values, in order, to choose from. */
	Map<String, String> choices(String prefix, Iterable<String> values) {
		Map<String, String> choices = new LinkedHashMap<>();
		values.forEach((value) -> choices.put(value, say(prefix + value)));
		return choices;
	}

}
