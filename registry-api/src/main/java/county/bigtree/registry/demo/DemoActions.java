package county.bigtree.registry.demo;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.LongConsumer;

import county.bigtree.domain.review.NominationMove;
import county.bigtree.domain.standing.Condition;
import county.bigtree.registry.check.FindingJson;
import county.bigtree.registry.condition.Began;
import county.bigtree.registry.condition.ReportCondition;
import county.bigtree.registry.county.AddRulebook;
import county.bigtree.registry.measurement.FileRemeasurement;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.measurement.MeasurementMove;
import county.bigtree.registry.measurement.MoveMeasurement;
import county.bigtree.registry.nomination.FileNomination;
import county.bigtree.registry.nomination.MoveNomination;
import county.bigtree.registry.nomination.NominationBody;
import county.bigtree.registry.nomination.NominationBook;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Actors;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.rules.RulebookJson;
import county.bigtree.registry.signoff.GiveSignOff;
import county.bigtree.registry.signoff.SignOffBody;
import county.bigtree.registry.signoff.SignOffs;
import county.bigtree.registry.signoff.TakeBack;
import county.bigtree.registry.transfer.ImportAtOnce;
import county.bigtree.registry.transfer.ImportJob;
import county.bigtree.registry.transfer.MappingBody;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/**
 * Does one action of the demo's story through the use case that a request would reach.
 */
@Component
@ConditionalOnProperty("registry.demo")
class DemoActions {

	static final LongConsumer WHATEVER_ITS_REVISION = (revision) -> {
	};

	private final Filing filing;

	private final Deciding deciding;

	private final List<DemoPart> others;

	private final Actors actors;

	DemoActions(Filing filing, Deciding deciding, List<DemoPart> others, Actors actors) {
		this.filing = filing;
		this.deciding = deciding;
		this.others = others;
		this.actors = actors;
	}

	void act(DemoStory story, JsonNode action) {
		Actor actor = actor(story, action);
		switch (text(action, "do")) {
			case "rulebook" -> rulebook(story, action, actor);
			case "nominate" -> nominate(story, action, actor);
			case "remeasure" -> story.remember("measurement", text(action, "as"),
					confirming(story.body(action, MeasurementBody.class), MeasurementBody::confirming,
							(body) -> this.filing.remeasurement().file(actor, tree(story, action), body)));
			case "report" -> report(story, action, actor);
			case "sign-off" -> signOff(story, action, actor);
			case "decide" -> decide(story, action, actor);
			case "revoke" -> this.deciding.takeBack()
				.revoke(actor, story.recall("sign-off", text(action, "signOff")), reason(action),
						WHATEVER_ITS_REVISION);
			case "set-aside" -> this.deciding.takeBack()
				.setAside(actor, story.recall("measurement", text(action, "measurement")), reason(action),
						WHATEVER_ITS_REVISION);
			case "move-measurement" -> moveMeasurement(story, action, actor);
			case "import" -> take(story, action, actor);
			default -> {
				if (this.others.stream().noneMatch((other) -> other.act(story, action, actor))) {
					move(story, action, actor);
				}
			}
		}
	}

	private void rulebook(DemoStory story, JsonNode action, Actor actor) {
		RulebookJson body = story.body(action, RulebookJson.class);
		this.deciding.addRulebook().add(actor, text(action, "county"), body, body.reason(), false);
	}

	/**
	 * Those who file in the story have looked again at what they are asked about.
	 */
	private static <T> UUID confirming(T body, BiFunction<T, List<String>, T> confirm, Function<T, UUID> file) {
		try {
			return file.apply(body);
		}
		catch (Problem ex) {
			if (ex.type() != ProblemType.UNANSWERED_CHECKS || !(ex.members().get("checks") instanceof List<?> asked)) {
				throw ex;
			}
			List<String> codes = asked.stream().map((one) -> ((FindingJson) one).code()).toList();
			return file.apply(confirm.apply(body, codes));
		}
	}

	private void nominate(DemoStory story, JsonNode action, Actor actor) {
		UUID id = confirming(story.body(action, NominationBody.class), NominationBody::confirming,
				(body) -> this.filing.nomination().file(actor, text(action, "county"), body));
		NominationBook.Nomination nomination = this.filing.book().get(id);
		story.remember("nomination", text(action, "as"), id);
		story.remember("tree", text(action, "as"), nomination.tree());
		story.remember("measurement", text(action, "as"), nomination.measurement());
	}

	private void report(DemoStory story, JsonNode action, Actor actor) {
		Report body = story.body(action, Report.class);
		UUID report = this.filing.condition()
			.report(actor, tree(story, action), Condition.find(body.condition()).orElseThrow(), body.observedOn(),
					Began.of(body.began(), body.between()), body.remarks());
		story.remember("report", text(action, "as"), report);
	}

	private void signOff(DemoStory story, JsonNode action, Actor actor) {
		UUID measurement = story.recall("measurement", text(action, "measurement"));
		UUID id = confirming(story.body(action, SignOffBody.class), SignOffBody::confirming,
				(body) -> this.deciding.signOff().give(actor, measurement, body));
		story.remember("sign-off", text(action, "as"), id);
		Optional.ofNullable(this.deciding.signOffs().get(id).ownMeasurement())
			.ifPresent((own) -> story.remember("measurement", text(action, "as"), own));
	}

	private void decide(DemoStory story, JsonNode action, Actor actor) {
		Decision body = story.body(action, Decision.class);
		this.filing.condition()
			.decide(actor, story.recall("report", text(action, "report")), body.accept(),
					Began.of(body.began(), body.between()), body.reason(), WHATEVER_ITS_REVISION);
	}

	private void move(DemoStory story, JsonNode action, Actor actor) {
		Move body = story.body(action, Move.class);
		this.deciding.moveNomination()
			.move(actor, story.recall("nomination", text(action, "nomination")),
					NominationMove.find(body.move()).orElseThrow(), body.verifier(), body.reason(),
					WHATEVER_ITS_REVISION);
	}

	private void moveMeasurement(DemoStory story, JsonNode action, Actor actor) {
		Move body = story.body(action, Move.class);
		this.deciding.moveMeasurement()
			.move(actor, story.recall("measurement", text(action, "measurement")),
					MeasurementMove.find(body.move()).orElseThrow(), body.verifier(), body.reason(),
					WHATEVER_ITS_REVISION);
	}

	private void take(DemoStory story, JsonNode action, Actor actor) {
		ImportJob job = this.filing.importing()
			.take(actor, text(action, "county"), DemoFiles.bytes(text(action, "file")),
					story.body(action, MappingBody.class));
		if (job.failure() != null) {
			throw new IllegalStateException(job.failure());
		}
		if (action.path("as").isString()) {
			story.remember("import", text(action, "as"), job.id());
		}
	}

	/**
	 * The actor, with the roles held then; where another has to agree, with the roles of
	 * both. What nobody with an account does is handed the administrator, and asks
	 * nothing of them.
	 */
	private Actor actor(DemoStory story, JsonNode action) {
		Actor actor = this.actors.get(story.person(action.path("actor").isString() ? text(action, "actor") : "admin"));
		if (!action.path("agreedBy").isString()) {
			return actor;
		}
		Map<String, Role> roles = new HashMap<>(this.actors.get(story.person(text(action, "agreedBy"))).roles());
		roles.putAll(actor.roles());
		return new Actor(actor.id(), actor.creditName(), actor.administrator(), roles);
	}

	/**
	 * The id of a tree that the story names, or the tag of one from an older record.
	 */
	static String tree(DemoStory story, JsonNode action) {
		return action.path("tag").isString() ? text(action, "tag")
				: story.recall("tree", text(action, "tree")).toString();
	}

	static String reason(JsonNode action) {
		return text(action.path("body"), "reason");
	}

	static String text(JsonNode node, String field) {
		return node.path(field).stringValue();
	}

	record Report(String condition, LocalDate observedOn, @Nullable LocalDate began, Began.@Nullable Between between,
			@Nullable String remarks) {
	}

	record Decision(boolean accept, @Nullable LocalDate began, Began.@Nullable Between between,
			@Nullable String reason) {
	}

	record Move(String move, @Nullable UUID verifier, @Nullable String reason) {
	}

	/**
	 * What volunteers do.
	 */
	@Component
	record Filing(FileNomination nomination, NominationBook book, FileRemeasurement remeasurement,
			ReportCondition condition, ImportAtOnce importing) {
	}

	/**
	 * What verifiers and coordinators do.
	 */
	@Component
	record Deciding(AddRulebook addRulebook, MoveNomination moveNomination, GiveSignOff signOff, SignOffs signOffs,
			TakeBack takeBack, MoveMeasurement moveMeasurement) {
	}

}
