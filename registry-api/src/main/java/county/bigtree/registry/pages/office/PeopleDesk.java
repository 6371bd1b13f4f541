package county.bigtree.registry.pages.office;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.session.PublicAddress;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/**
 * What the page of a county's people and that of all have in common. Where no county is
 * given it is for all.
 */
@Component
class PeopleDesk {

	private static final List<String> ROLES = List.of("volunteer", "verifier", "coordinator");

	private static final String ADMINISTRATOR = "administrator";

	private static final List<String> ALL_ROLES = List.of("volunteer", "verifier", "coordinator", ADMINISTRATOR);

	private final PublicAddress address;

	private final Choices choices;

	PeopleDesk(PublicAddress address, Choices choices) {
		this.address = address;
		this.choices = choices;
	}

	/** The page, with the people of a day where the form names one. */
	String page(@Nullable String county, Api api, Form form, Model model) {
		JsonNode found = (county != null) ? api.get("/counties/{county}", county) : null;
		String query = (county != null) ? "county={county}&" : "{county}";
		String of = (county != null) ? county : "";
		JsonNode people = api.get("/people?" + query + "limit=100" + asked(form, "on") + asked(form, "cursor"), of,
				form.value("on"), form.value("cursor"));
		model.addAttribute("form", form);
		model.addAttribute("county", found);
		model.addAttribute("when", (found != null) ? When.in(found) : When.UTC);
		model.addAttribute("people", people);
		model.addAttribute("at", at(county));
		model.addAttribute("roles", this.choices.of("role.", (county != null) ? ROLES : ALL_ROLES));
		model.addAttribute("who", names(people.path("items")));
		if (county == null) {
			model.addAttribute("counties", counties(api));
		}
		return "people";
	}

	/** Variables that are not asked for are left empty, so that each has its place. */
	private static String asked(Form form, String name) {
		return form.isFilled(name) ? "&" + name + "={" + name + "}" : "{" + name + "}";
	}

	String invite(@Nullable String county, Api api, Form form, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("email", form.value("email"));
		form.text(body, "creditName");
		body.putArray("roles").add(role(county, form.value("invitedCounty"), form.value("invitedRole")));
		Api.Outcome outcome = api.post("/invitations").send(body);
		if (outcome.refusal() != null) {
			form.refuse(outcome.refusal(), PeopleDesk::ofInvitation);
			response.setStatus(outcome.refusal().type().status().value());
			return page(county, api, form, model);
		}
		model.addAttribute("handed", outcome.json());
		model.addAttribute("link", "invitation");
		return link(county, "/invitations", api, model);
	}

	private static String ofInvitation(String field) {
		return switch (field) {
			case "roles.0.county" -> "invitedCounty";
			case "roles.0.role", "roles" -> "invitedRole";
			default -> field;
		};
	}

	String give(@Nullable String county, Api api, Form form, Model model, HttpServletResponse response) {
		if (!form.isFilled("person")) {
			form.refuse("person", "Choose who is to hold it.");
			response.setStatus(422);
			return page(county, api, form, model);
		}
		ObjectNode body = role(county, form.value("county"), form.value("role"));
		form.text(body, "from").text(body, "until");
		Api.Outcome outcome = api.post("/people/{person}/roles", form.value("person")).once(form.key()).send(body);
		return Answers.refused(outcome, form, response) ? page(county, api, form, model)
				: "redirect:" + at(county) + "?done=given";
	}

	private static ObjectNode role(@Nullable String county, String chosen, String role) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		if (!role.isEmpty()) {
			body.put("role", role);
		}
		String where = (county != null) ? county : chosen;
		if (!where.isEmpty() && !role.equals(ADMINISTRATOR)) {
			body.put("county", where);
		}
		return body;
	}

	/** A link by which somebody chooses a new password, told once. */
	String reset(@Nullable String county, UUID person, Api api, Model model) {
		model.addAttribute("handed", Answers.require(api.post("/people/{person}/password-reset", person).send()));
		model.addAttribute("link", "reset");
		return link(county, "/password-reset", api, model);
	}

	private String link(@Nullable String county, String path, Api api, Model model) {
		JsonNode found = (county != null) ? api.get("/counties/{county}", county) : null;
		String here = ServletUriComponentsBuilder.fromCurrentContextPath().path(path).toUriString();
		model.addAttribute("address", this.address.isKnown() ? this.address.of(path) : here);
		model.addAttribute("county", found);
		model.addAttribute("at", at(county));
		model.addAttribute("when", (found != null) ? When.in(found) : When.UTC);
		return "one-time-link";
	}

	private static String at(@Nullable String county) {
		return (county != null) ? "/desk/" + county + "/people" : "/desk/people";
	}

	private Map<String, String> names(JsonNode people) {
		Map<String, String> names = new LinkedHashMap<>();
		names.put("", this.choices.words("people.choose"));
		people.forEach((person) -> {
			if (person.path("active").asBoolean(false)) {
				names.put(person.path("id").asString(""),
						person.path("creditName").asString("") + ", " + person.path("email").asString(""));
			}
		});
		return names;
	}

	private Map<String, String> counties(Api api) {
		Map<String, String> counties = new LinkedHashMap<>();
		counties.put("", this.choices.words("people.county.none"));
		api.get("/counties?limit=200")
			.path("items")
			.forEach((county) -> counties.put(county.path("key").asString(""), county.path("name").asString("")));
		return counties;
	}

}
