package county.bigtree.registry.pages.filing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;
import org.springframework.web.util.HtmlUtils;

/**
 * A form as a browser without scripts would send it from a page: what stands in its
 * fields, of boxes and rounds those that are chosen, of lists what is selected. What lies
 * in templates is no part of it.
 */
final class SentForm {

	private static final Pattern FIELD = Pattern.compile("<(input|select|textarea)\\b([^>]*)>", Pattern.DOTALL);

	private static final Pattern ATTRIBUTE = Pattern.compile("([a-z-]+)(?:=\"([^\"]*)\")?");

	private static final Pattern OPTION = Pattern.compile("<option\\b([^>]*)>");

	private final MultiValueMap<String, String> values = new LinkedMultiValueMap<>();

	private SentForm() {
	}

	/** The first form of the page that is sent to this address. */
	static SentForm of(String page, String action) {
		Matcher begin = Pattern.compile("<form\\b[^>]*action=\"" + Pattern.quote(action) + "\"[^>]*>").matcher(page);
		if (!begin.find()) {
			throw new AssertionError("no form is sent to " + action + ": " + page);
		}
		String form = page.substring(begin.end(), page.indexOf("</form>", begin.end()))
			.replaceAll("(?s)<template\\b.*?</template>", "");
		SentForm sent = new SentForm();
		Matcher field = FIELD.matcher(form);
		while (field.find()) {
			sent.read(field.group(1), attributes(field.group(2)), form.substring(field.end()));
		}
		return sent;
	}

	private void read(String element, Map<String, String> attributes, String rest) {
		String name = attributes.get("name");
		if (name == null) {
			return;
		}
		if (element.equals("textarea")) {
			this.values.add(name, HtmlUtils.htmlUnescape(rest.substring(0, rest.indexOf("</textarea>"))));
		}
		else if (element.equals("select")) {
			this.values.add(name, selected(rest.substring(0, rest.indexOf("</select>"))));
		}
		else {
			String type = attributes.getOrDefault("type", "text");
			boolean chosen = !List.of("checkbox", "radio").contains(type) || attributes.containsKey("checked");
			if (chosen) {
				this.values.add(name, attributes.getOrDefault("value", ""));
			}
		}
	}

	private static String selected(String options) {
		List<Map<String, String>> all = new ArrayList<>();
		Matcher option = OPTION.matcher(options);
		while (option.find()) {
			all.add(attributes(option.group(1)));
		}
		return all.stream()
			.filter((one) -> one.containsKey("selected"))
			.findFirst()
			.orElse(all.get(0))
			.getOrDefault("value", "");
	}

	private static Map<String, String> attributes(String text) {
		Map<String, String> attributes = new LinkedHashMap<>();
		Matcher attribute = ATTRIBUTE.matcher(text);
		while (attribute.find()) {
			String value = attribute.group(2);
			attributes.put(attribute.group(1), (value != null) ? HtmlUtils.htmlUnescape(value) : "");
		}
		return attributes;
	}

	/** Types into a field that the page has, or presses a button. */
	SentForm with(String name, String value) {
		this.values.set(name, value);
		return this;
	}

	/** Ticks one more. */
	SentForm tick(String name, String value) {
		this.values.add(name, value);
		return this;
	}

	String value(String name) {
		return java.util.Objects.requireNonNullElse(this.values.getFirst(name), "");
	}

	boolean has(String name) {
		return this.values.containsKey(name);
	}

	MultiValueMap<String, String> values() {
		return this.values;
	}

}
