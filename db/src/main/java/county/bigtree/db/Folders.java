package county.bigtree.db;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;

import org.jspecify.annotations.Nullable;

/**
 * Removes folders with all they hold.
 */
final class Folders {

	private Folders() {
	}

	/**
	 * Links are removed, not followed. A folder that is not there is fine.
	 */
	static void delete(Path folder) throws IOException {
		if (!Files.isDirectory(folder)) {
			return;
		}
		Files.walkFileTree(folder, new SimpleFileVisitor<>() {
			@Override
			public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
				Files.deleteIfExists(file);
				return FileVisitResult.CONTINUE;
			}

			@Override
			public FileVisitResult postVisitDirectory(Path directory, @Nullable IOException ex) throws IOException {
				if (ex != null) {
					throw ex;
				}
				Files.deleteIfExists(directory);
				return FileVisitResult.CONTINUE;
			}
		});
	}

}
