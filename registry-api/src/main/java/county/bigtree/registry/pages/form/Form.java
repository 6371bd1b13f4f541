package county.bigtree.registry.pages.form;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.UnaryOperator;

import county.bigtree.registry.http.ReadsItself;
import county.bigtree.registry.http.StorableText;
import county.bigtree.registry.problem.FieldProblem;
import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What was typed into a form, kept as it was, and what is wrong with it. Fields are named
 * as the API names the entries, with a point between levels: {@code location.latitude}.
 * Each form has a key, so that sending it twice does it once.
 */
public final class Form implements ReadsItself {

	private static final String KEY = "key";

	private static final String SEEN = "seen";

	/**
	 * As the API begins what it says of entries left out: not be null, blank or empty.
	 */
	private static final String LEFT_OUT = "must not be ";

	private final Map<String, List<String>> typed;

	private final Map<String, String> errors = new LinkedHashMap<>();

	private @Nullable Refusal refusal;

	/**
	 * What is said of an entry that is missing; null where the API's own words will do.
	 */
	private final @Nullable String missing;

	private Form(Map<String, List<String>> typed, @Nullable String missing) {
		this.typed = typed;
		this.missing = missing;
	}

	/** An empty form with a key of its own. */
	public static Form empty() {
		Form form = new Form(new LinkedHashMap<>(), null);
		form.put(KEY, UUID.randomUUID().toString());
		return form;
	}

	/** What the request brings, by address or body. */
	public static Form of(HttpServletRequest request) {
		return of(request, null);
	}

	static Form of(HttpServletRequest request, @Nullable String missing) {
		Form form = new Form(new LinkedHashMap<>(), missing);
		request.getParameterMap()
			.forEach((name, values) -> form.typed.put(name,
					Arrays.stream(values).filter(Objects::nonNull).map(Form::plain).toList()));
		if (form.key().isEmpty()) {
			form.put(KEY, UUID.randomUUID().toString());
		}
		return form;
	}

	/**
	 * Without space around it, and without characters that no record takes.
	 */
	private static String plain(String typed) {
		return StorableText.of(typed).strip();
	}

	/** What stands in the field; empty where nothing does. */
	public String value(String name) {
		List<String> values = values(name);
		return values.isEmpty() ? "" : values.get(0);
	}

	public List<String> values(String name) {
		return this.typed.getOrDefault(name, List.of());
	}

	/** Whether this choice is made in the field. */
	public boolean has(String name, String choice) {
		return values(name).contains(choice);
	}

	public boolean isFilled(String name) {
		return !value(name).isEmpty();
	}

	/** Fills a field, as a proposal. */
	public Form put(String name, @Nullable String value) {
		this.typed.put(name, (value != null) ? List.of(value) : List.of());
		return this;
	}

	/** By which it is known when it is sent twice. */
	public String key() {
		return value(KEY);
	}

	/** Has it be another form from here on, which is done even if this one was. */
	public Form anew() {
		return put(KEY, UUID.randomUUID().toString());
	}

	/** The state that was decided on, as the API tagged it. */
	public String seen() {
		return value(SEEN);
	}

	/** Has the form say on which state it decides. */
	public Form seen(@Nullable String tag) {
		return put(SEEN, tag);
	}

	/** The error of a field, or null. */
	public @Nullable String error(String name) {
		return this.errors.get(name);
	}

	/** What is wrong, by field, in the order of finding. */
	public Map<String, String> errors() {
		return this.errors;
	}

	/**
	 * An error away from its field: what only says what the entry must be names it.
	 */
	public String told(String name) {
		String error = this.errors.getOrDefault(name, "");
		return (error.isEmpty() || !Character.isLowerCase(error.charAt(0))) ? error : inWords(name) + ": " + error;
	}

	/** The last part of a name, as in {@code visits.0.measuredOn}. */
	private static String inWords(String name) {
		String last = name.replaceFirst(".*\\.", "")
			.replaceFirst("-[0-9a-f-]{36}$", "")
			.replaceAll("([A-Z])", " $1")
			.toLowerCase(Locale.ROOT);
		return last.isEmpty() ? name : Character.toUpperCase(last.charAt(0)) + last.substring(1);
	}

	public boolean isWrong() {
		return !this.errors.isEmpty() || this.refusal != null;
	}

	public @Nullable Refusal refusal() {
		return this.refusal;
	}

	public Form refuse(String name, String why) {
		this.errors.putIfAbsent(name, why);
		return this;
	}

	/** Takes over what the API refused, each entry at the field of its name. */
	public Form refuse(Refusal refusal) {
		return refuse(refusal, UnaryOperator.identity());
	}

	/**
	 * As {@link #refuse(Refusal)}, where fields have names of their own.
	 * @param field gives the name of the field for that of the entry, as
	 * {@code location.latitude}
	 */
	public Form refuse(Refusal refusal, UnaryOperator<String> field) {
		this.refusal = refusal;
		for (FieldProblem error : refusal.errors()) {
			String entry = error.pointer().replaceFirst("^#?/?", "").replace('/', '.');
			String ours = (error.code().equals("missing") && error.detail().startsWith(LEFT_OUT)) ? this.missing : null;
			refuse(field.apply(entry), (ours != null) ? ours : error.detail());
		}
		return this;
	}

	/** Puts a text into the body, if anything was typed. */
	public Form text(ObjectNode body, String name) {
		return set(body, name, isFilled(name) ? JsonNodeFactory.instance.stringNode(value(name)) : null);
	}

	/** Puts a number into the body; what is none is an error of the field. */
	public Form number(ObjectNode body, String name, String ifNone) {
		if (!isFilled(name)) {
			return this;
		}
		try {
			return set(body, name, JsonNodeFactory.instance.numberNode(new java.math.BigDecimal(value(name))));
		}
		catch (NumberFormatException ex) {
			return refuse(name, ifNone);
		}
	}

	/** Puts yes or no into the body: a box that is ticked or not. */
	public Form yesOrNo(ObjectNode body, String name) {
		return set(body, name, JsonNodeFactory.instance.booleanNode(isFilled(name)));
	}

	/** Puts all choices of a field into the body as a list. */
	public Form list(ObjectNode body, String name) {
		var list = JsonNodeFactory.instance.arrayNode();
		values(name).stream().filter((value) -> !value.isEmpty()).forEach(list::add);
		return set(body, name, list);
	}

	private Form set(ObjectNode body, String name, @Nullable JsonNode value) {
		if (value != null) {
			ObjectNode at = body;
			String[] steps = name.split("\\.");
			for (int step = 0; step < steps.length - 1; step++) {
				at = at.withObjectProperty(steps[step]);
			}
			at.set(steps[steps.length - 1], value);
		}
		return this;
	}

}
