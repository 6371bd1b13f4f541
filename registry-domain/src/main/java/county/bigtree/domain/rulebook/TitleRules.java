package county.bigtree.domain.rulebook;

import java.util.Arrays;
import java.util.Set;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Method;
import org.jspecify.annotations.Nullable;

/**
 * What a county asks for a title beyond what it asks for a rank. A girth read off a
 * Biltmore stick never takes one (common practice, no source): the stick is read to the
 * inch of diameter, three inches of girth.
 *
 * @param requiredSignOffs agreeing sign-offs on a measurement on which a title would
 * rest, 1 to 5
 * @param needsCoordinator whether a sign-off that would change who holds a title waits
 * for a coordinator's yes
 * @param methods by which figures may take a title; of a figure for which it names none,
 * any
 * @param photos passed photos of its tree, 0 (the default) to 10, without which a
 * measurement on which a title would rest is not signed off
 */
public record TitleRules(int requiredSignOffs, boolean needsCoordinator, Set<Method> methods, int photos) {

	/** Nothing more than for a rank. */
	public static final TitleRules NONE = new TitleRules(1, false, Set.of(), 0);

	private static final int MOST_PHOTOS = 10;

	public TitleRules {
		if (requiredSignOffs < 1 || requiredSignOffs > 5) {
			throw new IllegalArgumentException("requiredSignOffsForTitle must be 1 to 5, was " + requiredSignOffs);
		}
		if (methods.contains(Method.BILTMORE)) {
			throw new IllegalArgumentException("titleMethods must not name biltmore, which never takes a title");
		}
		if (photos < 0 || photos > MOST_PHOTOS) {
			throw new IllegalArgumentException("photosRequired must be 0 to " + MOST_PHOTOS + ", was " + photos);
		}
		methods = Set.copyOf(methods);
	}

	/**
	 * Whether figures taken so may hold a title.
	 */
	public boolean allow(FigureMethods taken) {
		return taken.girth() != Method.BILTMORE
				&& Arrays.stream(Kind.values()).allMatch((kind) -> allow(kind, taken.of(kind)));
	}

	private boolean allow(Kind kind, @Nullable Method taken) {
		return this.methods.stream().noneMatch((method) -> method.kind() == kind)
				|| (taken != null && this.methods.contains(taken));
	}

}
