package county.bigtree.registry.command;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.Recompute;
import org.springframework.stereotype.Service;

/**
 * Puts every tree's scores and every book in order, and says which were not.
 */
@Service
class RecomputeBooks implements RegisterCommand {

	private static final UUID FIRST = new UUID(0, 0);

	private final Recompute recompute;

	RecomputeBooks(Recompute recompute) {
		this.recompute = recompute;
	}

	@Override
	public String word() {
		return "recompute";
	}

	@Override
	public int run(Report report) {
		int trees = trees(report);
		int books = books(report);
		report.line((trees + books == 0) ? "Everything was in order: nothing was changed."
				: "Put in order: %,d trees, %,d books.", trees, books);
		return WELL;
	}

	private int trees(Report report) {
		int mended = 0;
		long looked = 0;
		for (List<UUID> slice = this.recompute.treesAfter(FIRST); !slice.isEmpty(); slice = this.recompute
			.treesAfter(slice.get(slice.size() - 1))) {
			for (UUID tree : slice) {
				if (this.recompute.tree(tree)) {
					report.line("Tree %s: its scores were put in order", tree);
					mended++;
				}
				report.progress("trees", ++looked);
			}
		}
		return mended;
	}

	private int books(Report report) {
		int mended = 0;
		long looked = 0;
		for (String county : this.recompute.counties()) {
			for (BookKey book : this.recompute.books(county)) {
				if (this.recompute.book(book)) {
					report.line("Book %s/%s: its titles, count or days were put in order", book.county(),
							book.species());
					mended++;
				}
				report.progress("books", ++looked);
			}
		}
		return mended;
	}

}
