package county.bigtree.registry.round.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.function.UnaryOperator;

import county.bigtree.registry.round.ReadRound;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.WayPoint;

/**
 * A round in GPX 1.1 for a receiver or a phone: each stop a waypoint, all of them a route
 * in their order. It holds exact places.
 */
record RoundInGpx(StopWords words, UnaryOperator<String> address) {

	private static final String TYPE = "application/gpx+xml";

	/** A seventh of a degree's decimals are a hundredth of a metre. */
	private static final int DECIMALS = 7;

	static String type() {
		return TYPE;
	}

	byte[] write(String name, Instant at, ReadRound.Walked round) {
		List<WayPoint> points = round.stops().stream().map(this::point).toList();
		GPX.Builder gpx = GPX.builder(GPX.Version.V11, "County big-tree registry")
			.metadata((about) -> about.name(name).time(at))
			.wayPoints(points);
		if (!points.isEmpty()) {
			gpx.addRoute((route) -> route.name(name).points(points));
		}
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try {
			GPX.Writer.of(new GPX.Writer.Indent("  "), DECIMALS).write(gpx.build(), bytes);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return bytes.toByteArray();
	}

	private WayPoint point(ReadRound.Stop stop) {
		return WayPoint.builder()
			.lat(stop.place().latitude().doubleValue())
			.lon(stop.place().longitude().doubleValue())
			.name(stop.tree().tag())
			.desc(storable(this.words.toDo(stop.tree())))
			.cmt(storable(this.words.onTheWay(stop)))
			.addLink(this.address.apply("/t/" + stop.tree().tag()))
			.build();
	}

	/** What XML 1.0 can't hold is left out. */
	private static String storable(String text) {
		return text.replaceAll("[^\\t\\n\\r\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]", "");
	}

}
