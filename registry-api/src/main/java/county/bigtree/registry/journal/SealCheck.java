package county.bigtree.registry.journal;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.jspecify.annotations.Nullable;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The seals follow from one another, and the journal is still what they sealed: every
 * county's change of that number has that hash, and no county that was sealed has gone.
 */
@Component
@Order(2)
class SealCheck implements RegisterCheck {

	private static final int FETCH = 200;

	private final JdbcClient jdbc;

	private final JsonMapper json;

	SealCheck(JdbcClient jdbc, JsonMapper json) {
		this.jdbc = jdbc;
		this.json = json;
	}

	@Override
	public String subject() {
		return "seals of the journal";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from seal").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		Followed followed = new Followed();
		try (Stream<Seal> seals = this.jdbc.sql("select * from seal order by number")
			.withFetchSize(FETCH)
			.query(Seal::read)
			.stream()) {
			seals.forEach((seal) -> {
				follow(seal, followed, findings);
				findings.looked();
			});
		}
	}

	private void follow(Seal seal, Followed followed, Findings findings) {
		String name = "Seal %d of %s".formatted(seal.number(), seal.day());
		if (seal.number() != followed.number + 1) {
			findings.add("%s follows seal %d".formatted(name, followed.number));
		}
		if (!Arrays.equals(seal.hash(), Entry.chained(followed.hash, seal.body()))) {
			findings.add("%s: its hash does not follow from its text and the seal before it".formatted(name));
		}
		List<Seal.Head> heads = heads(seal);
		if (heads == null || !Seal.text(seal.number(), seal.day(), seal.sealedAt(), heads).equals(seal.text())) {
			findings.add("%s: its text says otherwise".formatted(name));
		}
		else {
			compare(name, heads, followed, findings);
		}
		followed.number = seal.number();
		followed.hash = seal.hash();
	}

	private void compare(String name, List<Seal.Head> heads, Followed followed, Findings findings) {
		Map<String, Long> sealed = new HashMap<>();
		for (Seal.Head head : heads) {
			sealed.put(head.county(), head.seq());
			String hash = hash(head);
			if (!head.hash().equals(hash)) {
				findings.add("%s: change %d of %s was sealed with the hash %s, but %s".formatted(name, head.seq(),
						head.county(), head.hash(), (hash != null) ? "has " + hash : "is not there"));
			}
		}
		followed.sealed.forEach((county, seq) -> {
			if (sealed.getOrDefault(county, 0L) < seq) {
				findings.add("%s: change %d of %s was sealed before, and is not in it".formatted(name, seq, county));
			}
		});
		followed.sealed = sealed;
	}

	private @Nullable String hash(Seal.Head head) {
		return this.jdbc.sql("select encode(hash, 'hex') from change where county = ? and seq = ?")
			.params(head.county(), head.seq())
			.query(String.class)
			.optional()
			.orElse(null);
	}

	private @Nullable List<Seal.Head> heads(Seal seal) {
		try {
			return this.json.readTree(seal.body())
				.path("heads")
				.valueStream()
				.map((head) -> new Seal.Head(text(head, "county"), head.path("seq").asLong(0), text(head, "hash")))
				.toList();
		}
		catch (JacksonException ex) {
			return null;
		}
	}

	private static String text(JsonNode head, String field) {
		return head.path(field).asString("");
	}

	/**
	 * The seals as far as they have been followed.
	 */
	private static final class Followed {

		private long number;

		private byte[] hash = Seal.NONE;

		private Map<String, Long> sealed = Map.of();

	}

}
