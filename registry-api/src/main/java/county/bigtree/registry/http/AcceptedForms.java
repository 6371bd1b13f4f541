package county.bigtree.registry.http;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.springframework.http.MediaType;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.accept.HeaderContentNegotiationStrategy;
import org.springframework.web.context.request.NativeWebRequest;

/**
 * The forms in which an answer is accepted, without that of problems: what is no problem
 * must not be sent under its name, and problems are sent whatever is accepted.
 */
class AcceptedForms extends HeaderContentNegotiationStrategy {

	private static final List<MediaType> NONE = List.of(new MediaType("application", "x-nothing-else"));

	@Override
	public List<MediaType> resolveMediaTypes(NativeWebRequest request) throws HttpMediaTypeNotAcceptableException {
		List<MediaType> forms = super.resolveMediaTypes(request).stream()
			.filter((one) -> !isOfProblems(one))
			.map(AcceptedForms::withoutCharset)
			.toList();
		return forms.isEmpty() ? NONE : forms;
	}

	/** JSON has one encoding and no such parameter (RFC 8259, section 11). */
	private static MediaType withoutCharset(MediaType accepted) {
		if (accepted.getCharset() == null || !accepted.getSubtype().endsWith("json")) {
			return accepted;
		}
		Map<String, String> others = new LinkedHashMap<>(accepted.getParameters());
		others.keySet().removeIf("charset"::equalsIgnoreCase);
		return new MediaType(accepted.getType(), accepted.getSubtype(), others);
	}

	private static boolean isOfProblems(MediaType accepted) {
		return accepted.equalsTypeAndSubtype(MediaType.APPLICATION_PROBLEM_JSON)
				|| accepted.getSubtype().equals("*+json");
	}

}
