package county.bigtree.registry.pages.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import county.bigtree.registry.pages.picture.MapPicture;

/**
 * Finds room for the tags beside the dots of a printed map: to the right where that is
 * free, else to the left, above or below. Where nothing is free, it is where least is
 * hidden. Lengths are those of the drawing.
 */
final class MapTags {

	private static final double DOT = 2.6;

	/** Of a letter of 6.5, on average (measured on Noto Sans, figures and capitals). */
	private static final double LETTER = 4;

	private static final double HEIGHT = 5.4;

	private static final double GAP = 4;

	private MapTags() {
	}

	static List<Tag> of(List<MapPicture.Mark> marks) {
		List<Room> taken = new ArrayList<>(marks.stream()
			.map((mark) -> new Room(mark.x() - DOT, mark.y() - DOT, mark.x() + DOT, mark.y() + DOT))
			.toList());
		return marks.stream().sorted(Comparator.comparingDouble(MapPicture.Mark::y)).map((mark) -> {
			String text = text(mark);
			Room room = rooms(mark, LETTER * text.length()).stream()
				.min(Comparator.comparingDouble((one) -> taken.stream().mapToDouble(one::shared).sum()))
				.orElseThrow();
			taken.add(room);
			return new Tag(tenth(room.left()), tenth(room.bottom() - 0.4), text);
		}).toList();
	}

	private static String text(MapPicture.Mark mark) {
		String first = mark.trees().get(0).tag();
		return (mark.count() > 1) ? first + " +" + (mark.count() - 1) : first;
	}

	/** Where the tag of a mark may stand, the best first. */
	private static List<Room> rooms(MapPicture.Mark mark, double width) {
		double x = mark.x();
		double y = mark.y();
		return List.of(Room.at(x + GAP, y, width), Room.at(x - GAP - width, y, width),
				Room.at(x + 1, y - HEIGHT - 0.6, width), Room.at(x + 1, y + HEIGHT + 0.6, width),
				Room.at(x - 1 - width, y - HEIGHT - 0.6, width), Room.at(x - 1 - width, y + HEIGHT + 0.6, width));
	}

	private static double tenth(double place) {
		return Math.round(place * 10) / 10.0;
	}

	/**
	 * A tag, from the lower left corner of its text on.
	 */
	public record Tag(double x, double y, String text) {
	}

	private record Room(double left, double top, double right, double bottom) {

		static Room at(double left, double middle, double width) {
			return new Room(left, middle - HEIGHT / 2, left + width, middle + HEIGHT / 2);
		}

		/** How much of it the other takes. */
		double shared(Room other) {
			double wide = Math.min(this.right, other.right) - Math.max(this.left, other.left);
			double high = Math.min(this.bottom, other.bottom) - Math.max(this.top, other.top);
			return (wide > 0 && high > 0) ? wide * high : 0;
		}

	}

}
