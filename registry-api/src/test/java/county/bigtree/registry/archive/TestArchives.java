package county.bigtree.registry.archive;

import javax.sql.DataSource;

import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.NoSuchBeanDefinitionException;
import org.springframework.beans.factory.ObjectProvider;

/**
 * Archives of databases that no service works on.
 */
public final class TestArchives {

	private TestArchives() {
	}

	/** All pictures stand in the database. */
	static <T> ObjectProvider<T> noStore() {
		return new ObjectProvider<>() {
			@Override
			public T getObject() {
				throw new NoSuchBeanDefinitionException("store");
			}

			@Override
			public @Nullable T getIfAvailable() {
				return null;
			}
		};
	}

	public static ArchiveRegister of(DataSource database) {
		return new ArchiveRegister(database, noStore());
	}

}
