package county.bigtree.registry.journal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;

import org.jspecify.annotations.Nullable;

/**
 * Rows that wait to be written together: those of one statement in one batch, in the
 * order of {@link FactTable}, in which what others refer to comes first.
 */
final class GatheredFacts {

	private final Map<FactTable, Map<String, List<@Nullable Object[]>>> rows = new EnumMap<>(FactTable.class);

	void add(FactTable table, String sql, @Nullable Object[] values) {
		this.rows.computeIfAbsent(table, (any) -> new LinkedHashMap<>())
			.computeIfAbsent(sql, (any) -> new ArrayList<>())
			.add(values);
	}

	void forEachBatch(BiConsumer<String, List<@Nullable Object[]>> batch) {
		this.rows.values().forEach((statements) -> statements.forEach(batch));
	}

}
