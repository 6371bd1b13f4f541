package county.bigtree.registry.http;

import java.util.List;

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
		List<MediaType> forms = super.resolveMediaTypes(request).stream().filter((one) -> !isOfProblems(one)).toList();
		return forms.isEmpty() ? NONE : forms;
	}

	private static boolean isOfProblems(MediaType accepted) {
		return accepted.equalsTypeAndSubtype(MediaType.APPLICATION_PROBLEM_JSON)
				|| accepted.getSubtype().equals("*+json");
	}

}
