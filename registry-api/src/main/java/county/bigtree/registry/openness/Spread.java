package county.bigtree.registry.openness;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;

import county.bigtree.domain.place.Position;
import county.bigtree.registry.lookup.ReadScores.ScoreOfDay;
import org.jspecify.annotations.Nullable;

/**
 * How far the trees seen so far reach as they are shown, in place, time and kind. What
 * crosses the 180th meridian is told as a box around the earth.
 */
final class Spread {

	private final TreeSet<String> species = new TreeSet<>();

	private @Nullable Box box;

	private @Nullable LocalDate first;

	private @Nullable LocalDate last;

	void see(OpenTree tree) {
		this.species.add(tree.species().scientificName());
		tree.tree().shown().ifPresent(this::see);
		tree.scores().stream().filter((score) -> score.withdrawnAt() == null).forEach(this::see);
	}

	private void see(Position place) {
		Box before = this.box;
		this.box = (before == null) ? new Box(place.longitude(), place.latitude(), place.longitude(), place.latitude())
				: new Box(Math.min(before.west(), place.longitude()), Math.min(before.south(), place.latitude()),
						Math.max(before.east(), place.longitude()), Math.max(before.north(), place.latitude()));
	}

	private void see(ScoreOfDay score) {
		LocalDate day = score.measuredOn();
		this.first = (this.first == null || day.isBefore(this.first)) ? day : this.first;
		this.last = (this.last == null || day.isAfter(this.last)) ? day : this.last;
	}

	ArchiveXml.@Nullable Extent extent() {
		Box around = this.box;
		LocalDate from = this.first;
		LocalDate to = this.last;
		return (around != null && from != null && to != null)
				? new ArchiveXml.Extent(around, from, to, List.copyOf(this.species)) : null;
	}

}
