package county.bigtree.registry.owner;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads owners with what they consent to. Whoever asks has been found entitled.
 */
@Component
class ReadOwners {

	private static final String OWNERS = """
			select o.id, o.tree, n.body as name, w.body as contact, o.person, o.recorded_at, e.recorded_at as ended_at
			from tree_owner o left join owner_end e on e.owner = o.id
			left join text_body n on n.id = o.name left join text_body w on w.id = o.contact
			""";

	private static final String CONSENTS = """
			select s.owner, s.purpose, s.given, s.how, s.given_on, s.until_on, s.recorded_at, r.body as remarks,
			  (cast(:now as timestamptz) at time zone c.time_zone)::date as today
			from consent s join county c on c.key = s.county left join text_body r on r.id = s.remarks
			where s.owner = any(:owners) order by s.recorded_at desc, s.id desc""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	ReadOwners(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	Optional<Owner> find(UUID id) {
		return withConsents(this.jdbc.sql(OWNERS + "where o.id = ?").param(id).query(ReadOwners::owner).list()).stream()
			.findFirst();
	}

	/**
	 * The owners of a tree and of all that it is merged with, in the order of recording.
	 */
	List<Owner> of(UUID tree) {
		return withConsents(this.jdbc
			.sql(OWNERS + "where o.tree in (select tree_family(kept_tree(?), 'infinity')) order by o.recorded_at, o.id")
			.param(tree)
			.query(ReadOwners::owner)
			.list());
	}

	private static Owner owner(ResultSet row, int number) throws SQLException {
		return new Owner(row.getObject("id", UUID.class), row.getObject("tree", UUID.class), row.getString("name"),
				row.getString("contact"), row.getObject("person", UUID.class), SqlTime.get(row, "recorded_at"),
				SqlTime.find(row, "ended_at"), List.of());
	}

	private List<Owner> withConsents(List<Owner> owners) {
		Map<UUID, List<Owner.Consent>> said = new HashMap<>();
		this.jdbc.sql(CONSENTS)
			.param("owners", owners.stream().map(Owner::id).toArray(UUID[]::new))
			.param("now", SqlTime.of(this.clock.now()))
			.query((row) -> {
				List<Owner.Consent> consents = said.computeIfAbsent(row.getObject("owner", UUID.class),
						(owner) -> new ArrayList<>());
				consents.add(consent(row, consents));
			});
		return owners.stream().map((owner) -> owner.saying(said.getOrDefault(owner.id(), List.of()))).toList();
	}

	/** The newest of a purpose comes first, and only that may hold. */
	private static Owner.Consent consent(ResultSet row, List<Owner.Consent> newer) throws SQLException {
		String purpose = row.getString("purpose");
		LocalDate until = row.getObject("until_on", LocalDate.class);
		boolean last = newer.stream().noneMatch((one) -> one.purpose().equals(purpose));
		boolean holds = last && row.getBoolean("given")
				&& (until == null || !until.isBefore(row.getObject("today", LocalDate.class)));
		return new Owner.Consent(purpose, row.getBoolean("given"), row.getString("how"),
				row.getObject("given_on", LocalDate.class), until, SqlTime.get(row, "recorded_at"),
				row.getString("remarks"), holds);
	}

}
