package county.bigtree.registry.journal;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;

import org.jspecify.annotations.Nullable;

/**
 * One change under way: its instant, its number in each county that it touches, and the
 * fact tables it has written. Lives for one transaction, which holds the heads of all its
 * counties from {@link Journal#open} on.
 */
public final class Change {

	private final UUID id;

	private final Instant recordedAt;

	private final Map<String, CountyHead> heads;

	private final String county;

	private final Map<String, Object> remembered = new HashMap<>();

	private final Set<FactTable> written = new LinkedHashSet<>();

	private @Nullable GatheredFacts gathered;

	Change(UUID id, Instant recordedAt, String county, Map<String, CountyHead> heads) {
		this.id = id;
		this.recordedAt = recordedAt;
		this.county = county;
		this.heads = new LinkedHashMap<>(heads);
	}

	public UUID id() {
		return this.id;
	}

	/**
	 * The instant by which the register knows of what this change says.
	 */
	public Instant recordedAt() {
		return this.recordedAt;
	}

	/**
	 * The county in whose chain the facts of this change stand.
	 */
	public String county() {
		return this.county;
	}

	/**
	 * The counties that it touches.
	 */
	public Set<String> counties() {
		return Set.copyOf(this.heads.keySet());
	}

	/**
	 * The number of this change in its county.
	 */
	public long seq() {
		return head(this.county).seq() + 1;
	}

	/**
	 * The day of this change in its county.
	 */
	public LocalDate today() {
		return today(this.county);
	}

	/**
	 * The day of this change in one of the counties that it touches.
	 */
	public LocalDate today(String of) {
		return LocalDate.ofInstant(this.recordedAt, zone(of));
	}

	/**
	 * The time zone of one of the counties that it touches.
	 */
	public ZoneId zone(String of) {
		return head(of).zone();
	}

	/**
	 * Reads once what only a change of the county could make different: this one holds
	 * its head, so that no other does meanwhile. Not for what this one writes itself.
	 * @param of one of the counties that it touches
	 */
	public <T> T remember(Class<T> kind, String of, Supplier<T> read) {
		return kind
			.cast(this.remembered.computeIfAbsent(kind.getName() + " " + head(of).county(), (any) -> read.get()));
	}

	/**
	 * Says that facts of this change stand in the table, so that its journal entry names
	 * them.
	 */
	public void wrote(FactTable table) {
		this.written.add(table);
	}

	Set<FactTable> written() {
		return this.written;
	}

	/**
	 * The facts that are to be written together, or null where each is written at once.
	 */
	@Nullable GatheredFacts gathered() {
		return this.gathered;
	}

	void gather(@Nullable GatheredFacts facts) {
		this.gathered = facts;
	}

	Map<String, CountyHead> heads() {
		return this.heads;
	}

	private CountyHead head(String key) {
		CountyHead head = this.heads.get(key);
		if (head == null) {
			throw new IllegalStateException("The change does not hold the head of " + key);
		}
		return head;
	}

}
