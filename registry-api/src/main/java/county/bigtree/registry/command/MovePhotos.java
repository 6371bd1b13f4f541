package county.bigtree.registry.command;

import java.util.List;
import java.util.OptionalLong;

import county.bigtree.registry.photo.store.MovePictures;
import county.bigtree.registry.photo.store.StoreAway;

import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Service;

/**
 * {@code move-photos store} and {@code move-photos database}: moves the pictures of all
 * photos to the object store or out of it.
 */
@Service
class MovePhotos implements RegisterCommand {

	private final MovePictures moving;

	private final ApplicationArguments arguments;

	MovePhotos(MovePictures moving, ApplicationArguments arguments) {
		this.moving = moving;
		this.arguments = arguments;
	}

	@Override
	public String word() {
		return "move-photos";
	}

	@Override
	public int run(Report report) {
		List<String> words = this.arguments.getNonOptionArgs();
		try {
			if (words.equals(List.of("store"))) {
				long moved = this.moving.toStore((done) -> report.progress("pictures", done, OptionalLong.empty()));
				report.line("Moved to the object store: %,d pictures.", moved);
				return WELL;
			}
			if (words.equals(List.of("database"))) {
				long moved = this.moving.toDatabase((done) -> report.progress("pictures", done, OptionalLong.empty()));
				report.line("Moved to the database: %,d pictures.", moved);
				return WELL;
			}
			report.line("Say where to: move-photos store, or move-photos database");
			return FAILED;
		}
		catch (StoreAway ex) {
			report.line("%s. Those that are left can be moved by beginning again.", ex.getMessage());
			return FAILED;
		}
	}

}
