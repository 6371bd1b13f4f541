package county.bigtree.registry.round;

import java.util.stream.IntStream;

/**
 * A short way from place to place that passes each once and need not come back: always on
 * to the nearest that is left, then made shorter by turning parts round (2-opt) and by
 * moving up to three neighbours elsewhere (Or-opt) until neither helps. It is seldom the
 * shortest; {@code ShortWayTest} says how far from it.
 *
 * <p>
 * Sources: Croes 1958, A method for solving traveling-salesman problems, Operations
 * Research 6:791-812 (2-opt); Or 1976 (Or-opt), as told by Johnson and McGeoch 1997, The
 * traveling salesman problem: a case study in local optimization. Both from memory.
 */
final class ShortWay {

	private static final int NONE = -1;

	/** Metres: less is no gain, so that rounding can't go round in circles. */
	private static final double GAIN = 1e-6;

	private static final int LONGEST_MOVED = 3;

	/** With more places, only the first is tried as the beginning. */
	private static final int MOST_BEGINNINGS = 60;

	private final double[][] metres;

	/** The first position that may be filled otherwise. */
	private final int free;

	private final int[] order;

	private ShortWay(double[][] metres, int free, int[] order) {
		this.metres = metres;
		this.free = free;
		this.order = order;
	}

	/**
	 * The numbers of the places in the order of the way.
	 * @param metres from each place to each, the same both ways
	 * @param fromFirst whether it has to begin at the first place
	 */
	static int[] through(double[][] metres, boolean fromFirst) {
		int beginnings = (fromFirst || metres.length > MOST_BEGINNINGS) ? Math.min(1, metres.length) : metres.length;
		int[] best = {};
		for (int beginning = 0; beginning < beginnings; beginning++) {
			ShortWay way = new ShortWay(metres, fromFirst ? 1 : 0, byNearest(metres, beginning));
			way.shorten();
			best = (best.length == 0 || length(metres, way.order) < length(metres, best) - GAIN) ? way.order : best;
		}
		return best;
	}

	/** How long the way through the places is in this order, in metres. */
	static double length(double[][] metres, int[] order) {
		return IntStream.range(1, order.length).mapToDouble((at) -> metres[order[at - 1]][order[at]]).sum();
	}

	private static int[] byNearest(double[][] metres, int beginning) {
		int[] order = IntStream.range(0, metres.length).toArray();
		swap(order, 0, beginning);
		for (int at = 1; at < order.length; at++) {
			int nearest = at;
			for (int other = at + 1; other < order.length; other++) {
				nearest = (metres[order[at - 1]][order[other]] < metres[order[at - 1]][order[nearest]]) ? other
						: nearest;
			}
			swap(order, at, nearest);
		}
		return order;
	}

	private void shorten() {
		boolean shorter = true;
		while (shorter) {
			shorter = turnParts() | moveParts();
		}
	}

	private boolean turnParts() {
		boolean shorter = false;
		for (int from = this.free; from < this.order.length - 1; from++) {
			for (int to = from + 1; to < this.order.length; to++) {
				double gain = link(from - 1, from) + link(to, to + 1) - link(from - 1, to) - link(from, to + 1);
				if (gain > GAIN) {
					turn(from, to);
					shorter = true;
				}
			}
		}
		return shorter;
	}

	private boolean moveParts() {
		boolean shorter = false;
		for (int length = 1; length <= LONGEST_MOVED; length++) {
			for (int from = this.free; from + length <= this.order.length; from++) {
				shorter |= moveBehindAny(from, from + length - 1);
			}
		}
		return shorter;
	}

	/** Moves the part behind the first place where that makes the way shorter. */
	private boolean moveBehindAny(int from, int to) {
		double gap = link(from - 1, from) + link(to, to + 1) - link(from - 1, to + 1);
		for (int behind = this.free - 1; behind < this.order.length; behind++) {
			if (behind < from - 1 || behind > to) {
				double straight = link(behind, from) + link(to, behind + 1);
				double turned = link(behind, to) + link(from, behind + 1);
				if (gap + link(behind, behind + 1) - Math.min(straight, turned) > GAIN) {
					if (turned < straight) {
						turn(from, to);
					}
					move(from, to, behind);
					return true;
				}
			}
		}
		return false;
	}

	/** Metres between two positions; beyond either end there is no way to go. */
	private double link(int from, int to) {
		return (from <= NONE || to >= this.order.length || to <= NONE || from >= this.order.length) ? 0
				: this.metres[this.order[from]][this.order[to]];
	}

	/** Three turns move a part: of what lies between, of the part, of both together. */
	private void move(int from, int to, int behind) {
		if (behind < from) {
			turn(behind + 1, from - 1);
			turn(from, to);
			turn(behind + 1, to);
		}
		else {
			turn(from, to);
			turn(to + 1, behind);
			turn(from, behind);
		}
	}

	private void turn(int from, int to) {
		for (int low = from, high = to; low < high; low++, high--) {
			swap(this.order, low, high);
		}
	}

	private static void swap(int[] order, int one, int other) {
		int kept = order[one];
		order[one] = order[other];
		order[other] = kept;
	}

}
