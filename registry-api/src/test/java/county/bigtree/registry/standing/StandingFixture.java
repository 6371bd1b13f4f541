package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

import javax.sql.DataSource;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import county.bigtree.db.DatabaseLogin;
import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.RulebookJson;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.transaction.annotation.EnableTransactionManagement;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/**
 * The recording core of one node on a database, and the facts of its histories written as
 * rows. Stands beside the use cases, so that the recording is tested without them.
 */
class StandingFixture implements AutoCloseable {

	static final UUID PERSON = UUID.fromString("00000000-0000-7000-8000-000000000001");

	final JdbcClient jdbc;

	final RegisterClock clock;

	final ScoresAsOf scores;

	final CatchUp catchUp;

	final TransactionTemplate transaction;

	private final Standings standings;

	private final TitlesAtStake atStake;

	private final Journal journal;

	private final JsonMapper json;

	final AnnotationConfigApplicationContext context;

	private final HikariDataSource dataSource;

	StandingFixture(DatabaseLogin login, Consumer<AnnotationConfigApplicationContext> faults) {
		HikariConfig config = new HikariConfig();
		config.setJdbcUrl(login.jdbcUrl());
		config.setUsername(login.user());
		config.setPassword(login.password());
		config.setMaximumPoolSize(4);
		config.setConnectionInitSql("set time zone 'UTC'");
		this.dataSource = new HikariDataSource(config);
		this.context = new AnnotationConfigApplicationContext();
		this.context.registerBean(DataSource.class, () -> this.dataSource);
		this.context.registerBean(JdbcClient.class, () -> JdbcClient.create(this.dataSource));
		this.context.registerBean(JdbcTemplate.class, () -> new JdbcTemplate(this.dataSource));
		this.context.registerBean(JsonMapper.class, () -> JsonMapper.builder().build());
		this.context.registerBean("transactionManager", DataSourceTransactionManager.class,
				() -> new DataSourceTransactionManager(this.dataSource));
		this.context.register(Transactions.class);
		this.context.scan("county.bigtree.registry.disclosure", "county.bigtree.registry.journal",
				"county.bigtree.registry.rules", "county.bigtree.registry.standing");
		removeWhatIsForTheWeb();
		faults.accept(this.context);
		this.context.refresh();
		this.jdbc = this.context.getBean(JdbcClient.class);
		this.clock = this.context.getBean(RegisterClock.class);
		this.scores = this.context.getBean(ScoresAsOf.class);
		this.catchUp = this.context.getBean(CatchUp.class);
		this.standings = this.context.getBean(Standings.class);
		this.atStake = this.context.getBean(TitlesAtStake.class);
		this.journal = this.context.getBean(Journal.class);
		this.json = this.context.getBean(JsonMapper.class);
		this.transaction = new TransactionTemplate(this.context.getBean(DataSourceTransactionManager.class));
	}

	private void removeWhatIsForTheWeb() {
		for (String name : this.context.getBeanDefinitionNames()) {
			String type = this.context.getBeanDefinition(name).getBeanClassName();
			if (type != null && type.contains(".web.")) {
				this.context.removeBeanDefinition(name);
			}
		}
	}

	/**
	 * Makes the one person of these histories and a species list.
	 */
	void begin(String... species) {
		this.jdbc.sql("""
				insert into person (id, email, credit_name, password_hash, created_at)
				values (?, 'one@example.test', 'One', 'none', now()) on conflict do nothing""").param(PERSON).update();
		for (String key : species) {
			this.jdbc.sql("""
					insert into species (key, scientific_name, genus, epithet, hybrid, common_name, conifer, genus_only,
					  source) values (?, ?, 'Probatio', ?, false, ?, false, false, 'test') on conflict do nothing""")
				.params(key, key, key, key)
				.update();
		}
	}

	/**
	 * Adds a species in the course of a history.
	 */
	Instant species(String county, String key) {
		return inTransaction(() -> {
			Change change = this.journal.open(county);
			begin(key);
			insert(change, FactTable.SPECIES_ADDITION,
					"insert into species_addition (county, seq, recorded_at, id, species) values (:county, :seq, :at, :id, :species)",
					(sql) -> sql.param("id", Uuid7.next()).param("species", key));
			this.journal.close(change, "species-added", PERSON);
			return change.recordedAt();
		});
	}

	Instant county(String key, String prefix, String zone, Rulebook rulebook) {
		return inTransaction(() -> {
			Change change = this.journal.openFirst(key, java.time.ZoneId.of(zone));
			this.jdbc.sql("""
					insert into county (key, seq, recorded_at, name, state, time_zone, tag_prefix, practice)
					values (?, 1, ?, ?, 'Nowhere', ?, ?, false)""")
				.params(key, SqlTime.of(change.recordedAt()), key, zone, prefix)
				.update();
			change.wrote(FactTable.COUNTY);
			insertRulebook(change, rulebook);
			this.journal.close(change, "county-founded", null);
			return change.recordedAt();
		});
	}

	Instant rulebook(String county, Rulebook rulebook) {
		return inTransaction(() -> {
			Change change = this.journal.open(county);
			insertRulebook(change, rulebook);
			this.standings.rulebookRecorded(change);
			this.journal.close(change, "rulebook", PERSON);
			return change.recordedAt();
		});
	}

	private void insertRulebook(Change change, Rulebook rulebook) {
		insert(change, FactTable.RULEBOOK,
				"insert into rulebook (county, seq, recorded_at, id, effective_on, body) "
						+ "values (:county, :seq, :at, :id, :on, :body::jsonb)",
				(sql) -> sql.param("id", Uuid7.next())
					.param("on", rulebook.effectiveOn())
					.param("body", this.json.writeValueAsString(RulebookJson.from(rulebook))));
	}

	Instant tree(String county, UUID tree, String species) {
		return changing(county, "nominated", tree, TitleReason.SIGNED_OFF, (change) -> {
			insert(change, FactTable.TREE,
					"insert into tree (county, seq, recorded_at, id, tag) values (:county, :seq, :at, :id, :tag)",
					(sql) -> sql.param("id", tree).param("tag", tree.toString()));
			identification(change, tree, species);
			location(change, tree, county);
		});
	}

	Instant identify(String county, UUID tree, String species) {
		return changing(county, "re-identified", tree, TitleReason.RE_IDENTIFIED,
				(change) -> identification(change, tree, species));
	}

	Instant relocate(String from, UUID tree, String to) {
		return inTransaction(() -> {
			Change change = this.journal.open(from, List.of(to));
			requireUnmoved(tree, from);
			location(change, tree, to);
			this.standings.refresh(change, tree, TitleReason.RELOCATED);
			this.journal.close(change, "relocated", PERSON);
			return change.recordedAt();
		});
	}

	Instant measure(String county, Known.Visit visit) {
		return changing(county, "measured", visit.tree(), TitleReason.SIGNED_OFF,
				(change) -> measurement(change, visit, visit.carriedOver() ? "carried-over" : "filed"));
	}

	Instant accept(String county, UUID tree) {
		return changing(county, "accepted", tree, TitleReason.SIGNED_OFF, (change) -> insert(change,
				FactTable.ACCEPTANCE,
				"insert into acceptance (county, seq, recorded_at, tree, basis) values (:county, :seq, :at, :tree, 'carried-over')",
				(sql) -> sql.param("tree", tree)));
	}

	/**
	 * A visit, what a verifier says of it, whether it is the first to be said, and what
	 * the verifier measured.
	 */
	record Signing(Known.Visit visit, Known.Word word, boolean first, Known.@Nullable Visit own) {
	}

	/**
	 * Signs off, and answers null where that was refused for want of photos.
	 */
	@Nullable Instant signOff(String county, UUID tree, Signing signing, boolean byCoordinator) {
		try {
			return signedOff(county, tree, signing, byCoordinator);
		}
		catch (TooFewPhotos ex) {
			return null;
		}
	}

	private Instant signedOff(String county, UUID tree, Signing signing, boolean byCoordinator) {
		Known.Word word = signing.word();
		return changing(county, "signed-off", tree, TitleReason.SIGNED_OFF, (change) -> {
			if (signing.first()) {
				int needed = this.atStake.signOffsNeeded(change, tree, word.visit(),
						this.context.getBean(RulesReader.class)
							.get(county)
							.on(signing.visit().on(), change.recordedAt()));
				insert(change, FactTable.SIGN_OFF_REQUIREMENT,
						"insert into sign_off_requirement (county, seq, recorded_at, measurement, required) "
								+ "values (:county, :seq, :at, :measurement, :required)",
						(sql) -> sql.param("measurement", word.visit()).param("required", needed));
			}
			if (signing.own() != null) {
				measurement(change, signing.own(), "checked");
			}
			insert(change, FactTable.SIGN_OFF,
					"insert into sign_off (county, seq, recorded_at, id, measurement, given_by, verdict, own_measurement, declares) "
							+ "values (:county, :seq, :at, :id, :measurement, :by, :verdict, :own, '[]')",
					(sql) -> sql.param("id", word.id())
						.param("measurement", word.visit())
						.param("by", PERSON)
						.param("verdict", word.verdict())
						.param("own", word.own(), Types.OTHER));
			requirePhotos(change, tree, signing);
			if (this.atStake.needCoordinator(change, tree, false)) {
				insert(change, FactTable.SIGN_OFF_DEFERRAL,
						"insert into sign_off_deferral (county, seq, recorded_at, sign_off) values (:county, :seq, :at, :id)",
						(sql) -> sql.param("id", word.id()));
				if (byCoordinator) {
					assent(change, word.id());
				}
			}
		});
	}

	private void requirePhotos(Change change, UUID tree, Signing signing) {
		Known.Visit own = signing.own();
		UUID counting = (own != null && own.measures().full()) ? own.id()
				: (signing.word().verdict().equals("confirmed") ? signing.word().visit() : null);
		Rulebook ofItsDay = this.context.getBean(RulesReader.class)
			.get(change.county())
			.on(signing.visit().on(), change.recordedAt());
		int passed = this.jdbc.sql("select photos_passed(kept_tree(?), ?)")
			.params(tree, SqlTime.of(change.recordedAt()))
			.query(Integer.class)
			.single();
		if (counting != null && passed < this.atStake.photosNeeded(change, tree, counting, ofItsDay)) {
			throw new TooFewPhotos();
		}
	}

	boolean isSignedOff(UUID signOff) {
		return this.jdbc.sql("select exists (select from sign_off where id = ?)")
			.param(signOff)
			.query(Boolean.class)
			.single();
	}

	/**
	 * Photos change no standing: nothing follows.
	 */
	Instant photograph(String county, Known.Photo photo) {
		Known.Visit of = photo.visit();
		return noting(county, "photo-added", (change) -> insert(change, FactTable.PHOTO,
				"insert into photo (county, seq, recorded_at, id, tree, measurement, shows, by_person, width, height, received_bytes, digest) "
						+ "values (:county, :seq, :at, :id, :tree, :measurement, 'whole', :by, 4, 3, 12, '')",
				(sql) -> sql.param("id", photo.id())
					.param("tree", photo.tree())
					.param("measurement", (of != null) ? of.id() : null, Types.OTHER)
					.param("by", PERSON)));
	}

	Instant look(String county, Known.Photo photo, String word) {
		return noting(county, "photo-" + word,
				(change) -> insert(change, FactTable.PHOTO_DECISION,
						"insert into photo_decision (county, seq, recorded_at, id, photo, decision, by_person) "
								+ "values (:county, :seq, :at, :id, :photo, :word, :by)",
						(sql) -> sql.param("id", Uuid7.next())
							.param("photo", photo.id())
							.param("word", word)
							.param("by", PERSON)));
	}

	Instant erase(String county, Known.Photo photo) {
		return noting(county, "photos-erased",
				(change) -> insert(change, FactTable.PHOTO_ERASURE,
						"insert into photo_erasure (county, seq, recorded_at, photo, by_person, ground) "
								+ "values (:county, :seq, :at, :photo, :by, 'asked-by-author')",
						(sql) -> sql.param("photo", photo.id()).param("by", PERSON)));
	}

	private Instant noting(String county, String kind, Consumer<Change> facts) {
		return inTransaction(() -> {
			Change change = this.journal.open(county);
			facts.accept(change);
			this.journal.close(change, kind, PERSON);
			return change.recordedAt();
		});
	}

	Instant assent(String county, UUID tree, UUID signOff) {
		return changing(county, "assented", tree, TitleReason.SIGNED_OFF, (change) -> assent(change, signOff));
	}

	private void assent(Change change, UUID signOff) {
		insert(change, FactTable.SIGN_OFF_ASSENT,
				"insert into sign_off_assent (county, seq, recorded_at, sign_off, by_person) values (:county, :seq, :at, :id, :by)",
				(sql) -> sql.param("id", signOff).param("by", PERSON));
	}

	Instant revoke(String county, UUID tree, UUID signOff) {
		return changing(county, "revoked", tree, TitleReason.REVOKED,
				(change) -> insert(change, FactTable.REVOCATION,
						"insert into revocation (county, seq, recorded_at, sign_off) values (:county, :seq, :at, :id)",
						(sql) -> sql.param("id", signOff)));
	}

	Instant setAside(String county, UUID tree, UUID visit) {
		return changing(county, "set-aside", tree, TitleReason.SET_ASIDE, (change) -> insert(change,
				FactTable.SETTING_ASIDE,
				"insert into setting_aside (county, seq, recorded_at, measurement) values (:county, :seq, :at, :id)",
				(sql) -> sql.param("id", visit)));
	}

	Instant condition(String county, Known.Seen seen) {
		TitleReason reason = switch (seen.condition()) {
			case FALLEN -> TitleReason.FELL;
			case DEAD -> TitleReason.DIED;
			case REMOVED -> TitleReason.REMOVED;
			case DAMAGED -> TitleReason.DAMAGED;
			default -> TitleReason.SEEN;
		};
		UUID report = Uuid7.next();
		return changing(county, "condition", seen.tree(), reason, (change) -> {
			insert(change, FactTable.CONDITION_REPORT,
					"insert into condition_report (county, seq, recorded_at, id, tree, condition, observed_on, reported_by) "
							+ "values (:county, :seq, :at, :id, :tree, :condition, :on, :by)",
					(sql) -> sql.param("id", report)
						.param("tree", seen.tree())
						.param("condition", seen.condition().word())
						.param("on", seen.observed())
						.param("by", PERSON));
			insert(change, FactTable.CONDITION_DECISION,
					"insert into condition_decision (county, seq, recorded_at, report, accepted, began_on) "
							+ "values (:county, :seq, :at, :id, true, :began)",
					(sql) -> sql.param("id", report).param("began", seen.began(), Types.DATE));
		});
	}

	Instant eligible(String county, UUID tree, boolean eligible) {
		return changing(county, "eligibility", tree, eligible ? TitleReason.ELIGIBLE : TitleReason.INELIGIBLE,
				(change) -> insert(change, FactTable.ELIGIBILITY,
						"insert into eligibility (county, seq, recorded_at, id, tree, eligible) values (:county, :seq, :at, :id, :tree, :yes)",
						(sql) -> sql.param("id", Uuid7.next()).param("tree", tree).param("yes", eligible)));
	}

	Instant takeOff(String county, UUID tree) {
		return changing(county, "taken-off", tree, TitleReason.TAKEN_OFF, (change) -> insert(change,
				FactTable.TAKING_OFF,
				"insert into taking_off (county, seq, recorded_at, tree, why) values (:county, :seq, :at, :tree, 'practice-emptied')",
				(sql) -> sql.param("tree", tree)));
	}

	Instant merge(String county, String other, Known.Merge merge) {
		return changingBoth(county, other, "merged", List.of(merge.tree(), merge.into()), TitleReason.MERGED,
				(change) -> insert(change, FactTable.MERGE,
						"insert into merge (county, seq, recorded_at, id, tree, into_tree) values (:county, :seq, :at, :id, :tree, :into)",
						(sql) -> sql.param("id", merge.id()).param("tree", merge.tree()).param("into", merge.into())));
	}

	Instant revokeMerge(String county, String other, Known.Merge merge) {
		return changingBoth(county, other, "merge-revoked", List.of(merge.tree(), merge.into()), TitleReason.MERGED,
				(change) -> insert(change, FactTable.MERGE_REVOCATION,
						"insert into merge_revocation (county, seq, recorded_at, merge) values (:county, :seq, :at, :id)",
						(sql) -> sql.param("id", merge.id())));
	}

	Instant split(String county, String other, UUID tree, UUID newTree, String species, List<UUID> visits) {
		return changingBoth(county, other, "split", List.of(tree, newTree), TitleReason.SPLIT, (change) -> {
			insert(change, FactTable.TREE,
					"insert into tree (county, seq, recorded_at, id, tag) values (:county, :seq, :at, :id, :tag)",
					(sql) -> sql.param("id", newTree).param("tag", newTree.toString()));
			identification(change, newTree, species);
			location(change, newTree, county);
			insert(change, FactTable.ACCEPTANCE,
					"insert into acceptance (county, seq, recorded_at, tree, basis) values (:county, :seq, :at, :tree, 'carried-over')",
					(sql) -> sql.param("tree", newTree));
			insert(change, FactTable.SPLIT,
					"insert into split (county, seq, recorded_at, id, tree, new_tree) values (:county, :seq, :at, :id, :tree, :new)",
					(sql) -> sql.param("id", Uuid7.next()).param("tree", tree).param("new", newTree));
			visits.forEach((visit) -> insert(change, FactTable.ASSIGNMENT,
					"insert into assignment (county, seq, recorded_at, id, measurement, tree) values (:county, :seq, :at, :id, :visit, :tree)",
					(sql) -> sql.param("id", Uuid7.next()).param("visit", visit).param("tree", newTree)));
		});
	}

	Instant rule(String county, String other, Known.Ruling ruling) {
		return changingBoth(county, other, "stem-ruled", List.of(ruling.tree()), TitleReason.RULED, (change) -> {
			insert(change, FactTable.STEM_RULING,
					"insert into stem_ruling (county, seq, recorded_at, id, tree, form, began_on) values (:county, :seq, :at, :id, :tree, 'single', :on)",
					(sql) -> sql.param("id", ruling.id()).param("tree", ruling.tree()).param("on", ruling.from()));
			ruling.kept()
				.forEach((visit) -> insert(change, FactTable.RULING_KEPT,
						"insert into ruling_kept (county, seq, recorded_at, ruling, measurement) values (:county, :seq, :at, :ruling, :visit)",
						(sql) -> sql.param("ruling", ruling.id()).param("visit", visit)));
		});
	}

	Instant fold(String county, String other, Known.Fold fold, List<UUID> trees) {
		return changingBoth(county, other, "species-folded", trees, TitleReason.FOLDED, (change) -> insert(change,
				FactTable.SPECIES_FOLD,
				"insert into species_fold (county, seq, recorded_at, id, species, into_species) values (:county, :seq, :at, :id, :species, :into)",
				(sql) -> sql.param("id", Uuid7.next()).param("species", fold.species()).param("into", fold.into())));
	}

	private Instant changingBoth(String county, String other, String kind, List<UUID> trees, TitleReason reason,
			Consumer<Change> facts) {
		return inTransaction(() -> {
			Change change = this.journal.open(county, List.of(other));
			facts.accept(change);
			this.standings.refresh(change, trees, reason);
			this.journal.close(change, kind, PERSON);
			return change.recordedAt();
		});
	}

	private void identification(Change change, UUID tree, String species) {
		insert(change, FactTable.IDENTIFICATION,
				"insert into identification (county, seq, recorded_at, id, tree, species, basis) "
						+ "values (:county, :seq, :at, :id, :tree, :species, 'leaf')",
				(sql) -> sql.param("id", Uuid7.next()).param("tree", tree).param("species", species));
	}

	private void location(Change change, UUID tree, String county) {
		insert(change, FactTable.LOCATION,
				"insert into location (county, seq, recorded_at, id, tree, stands_in, latitude, longitude, accuracy_metres, shown) "
						+ "values (:county, :seq, :at, :id, :tree, :standsIn, 40, -90, 5, 'county')",
				(sql) -> sql.param("id", Uuid7.next()).param("tree", tree).param("standsIn", county));
	}

	private void measurement(Change change, Known.Visit visit, String basis) {
		UUID text = Uuid7.next();
		insert(change, FactTable.TEXT_PIECE,
				"insert into text_piece (county, seq, recorded_at, id, digest) values (:county, :seq, :at, :id, '')",
				(sql) -> sql.param("id", text));
		insert(change, FactTable.MEASUREMENT,
				"insert into measurement (county, seq, recorded_at, id, tree, measured_on, filed_by, basis, measurers, readings, confirmed_checks, "
						+ "carry_height_years, carry_crown_years) "
						+ "values (:county, :seq, :at, :id, :tree, :on, :by, :basis, :measurers, :readings::jsonb, '[]', :heightYears, :crownYears)",
				(sql) -> sql.param("id", visit.id())
					.param("tree", visit.tree())
					.param("on", visit.on())
					.param("by", PERSON)
					.param("basis", basis)
					.param("measurers", text)
					.param("readings", readings(visit.methods()))
					.param("heightYears", visit.measures().full() ? null : visit.carries().heightYears(), Types.INTEGER)
					.param("crownYears", visit.measures().full() ? null : visit.carries().crownYears(), Types.INTEGER));
		reduction(change, visit.id(), 1, visit.measures());
	}

	/**
	 * By which methods, and no more: nothing here is reduced from readings.
	 */
	private String readings(FigureMethods methods) {
		Map<String, Map<String, String>> readings = new TreeMap<>();
		for (Kind kind : Kind.values()) {
			Method method = methods.of(kind);
			if (method != null) {
				readings.put(kind.name().toLowerCase(Locale.ROOT), Map.of("method", method.code()));
			}
		}
		return this.json.writeValueAsString(readings);
	}

	private void reduction(Change change, UUID visit, int version, Known.Measures measures) {
		Double girth = measures.girth();
		Double height = measures.height();
		Double crown = measures.crown();
		double each = measures.uncertainty();
		BigDecimal points = (girth != null && height != null && crown != null)
				? Points.of(girth, height, crown).toBigDecimal() : null;
		insert(change, FactTable.REDUCTION,
				"insert into reduction (county, seq, recorded_at, measurement, version, girth_inches, girth_u, height_feet, height_u, crown_feet, crown_u, points, points_u) "
						+ "values (:county, :seq, :at, :id, :version, :girth, :girthU, :height, :heightU, :crown, :crownU, :points, :u)",
				(sql) -> sql.param("id", visit)
					.param("version", version)
					.param("girth", girth, Types.NUMERIC)
					.param("girthU", (girth != null) ? each : null, Types.NUMERIC)
					.param("height", height, Types.NUMERIC)
					.param("heightU", (height != null) ? each : null, Types.NUMERIC)
					.param("crown", crown, Types.NUMERIC)
					.param("crownU", (crown != null) ? each : null, Types.NUMERIC)
					.param("points", points, Types.NUMERIC)
					.param("u", (points != null) ? Score.standardUncertainty(each, each, each) : null, Types.NUMERIC));
	}

	Instant reduceAgain(String county, UUID tree, UUID visit, int version, Known.Measures measures) {
		return changing(county, "reduced-again", tree, TitleReason.REDUCED_AGAIN,
				(change) -> reduction(change, visit, version, measures));
	}

	private void insert(Change change, FactTable table, String sql, UnaryOperator<JdbcClient.StatementSpec> values) {
		change.wrote(table);
		values
			.apply(this.jdbc.sql(sql)
				.param("county", change.county())
				.param("seq", change.seq())
				.param("at", SqlTime.of(change.recordedAt())))
			.update();
	}

	private Instant changing(String county, String kind, UUID tree, TitleReason reason, Consumer<Change> facts) {
		return inTransaction(() -> {
			Change change = this.journal.open(county, keptIn(tree));
			requireUnmoved(tree, county);
			facts.accept(change);
			this.standings.refresh(change, tree, reason);
			this.journal.close(change, kind, PERSON);
			return change.recordedAt();
		});
	}

	/**
	 * Where the tree stands into which this one is merged.
	 */
	private List<String> keptIn(UUID tree) {
		return this.jdbc
			.sql("select stands_in from location where tree = kept_tree(?) order by recorded_at desc limit 1")
			.param(tree)
			.query(String.class)
			.list();
	}

	/**
	 * As the use cases do: a tree that another node moved between the look and the lock
	 * is left alone.
	 */
	private void requireUnmoved(UUID tree, String county) {
		if (find(tree).filter((standsIn) -> !standsIn.equals(county)).isPresent()) {
			throw new MovedMeanwhile();
		}
	}

	/**
	 * Where a tree stands.
	 */
	String standsIn(UUID tree) {
		return find(tree).orElseThrow();
	}

	private Optional<String> find(UUID tree) {
		return this.jdbc.sql("select stands_in from location where tree = ? order by recorded_at desc limit 1")
			.param(tree)
			.query(String.class)
			.optional();
	}

	Instant recordedThrough(String county) {
		return this.journal.recordedThrough(county);
	}

	/**
	 * Does the work, and says whether it was done: it is not if the tree was moved.
	 */
	static boolean unlessMoved(Runnable work) {
		try {
			work.run();
			return true;
		}
		catch (MovedMeanwhile ex) {
			return false;
		}
	}

	private Instant inTransaction(java.util.function.Supplier<Instant> work) {
		Instant at = this.transaction.execute((status) -> work.get());
		if (at == null) {
			throw new IllegalStateException("no instant");
		}
		return at;
	}

	LocalDate day(String county, Instant at) {
		return this.context.getBean(county.bigtree.registry.rules.RulesReader.class).get(county).day(at);
	}

	@Override
	public void close() {
		this.context.close();
		this.dataSource.close();
	}

	/**
	 * Another node moved the tree.
	 */
	private static final class MovedMeanwhile extends RuntimeException {

		private static final long serialVersionUID = 1L;

	}

	/**
	 * By the sign-off a title would rest on figures of a tree with too few photos.
	 */
	private static final class TooFewPhotos extends RuntimeException {

		private static final long serialVersionUID = 1L;

	}

	/**
	 * Turns on transactions for the read sides.
	 */
	@EnableTransactionManagement
	static class Transactions {

	}

}
