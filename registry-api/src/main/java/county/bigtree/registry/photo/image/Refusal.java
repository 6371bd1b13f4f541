package county.bigtree.registry.photo.image;

import county.bigtree.registry.problem.Problem;

/**
 * Why a file is not taken, in a sentence for who sent it.
 */
final class Refusal {

	private Refusal() {
	}

	static Problem of(String code, String sentence) {
		return Problem.invalid("#/file", code, sentence);
	}

	static Problem cutOff() {
		return of("cut-off", "the file ends before its picture does: send it again");
	}

	static Problem damaged() {
		return of("damaged", "the picture in the file can't be read: save it again as JPEG");
	}

	static Problem moves() {
		return of("several-pictures", "the file holds several pictures: send one that does not move");
	}

}
