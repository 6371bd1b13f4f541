package county.bigtree.registry.problem.web;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Notes in the program's log what was refused to whom because of their roles: the
 * account's id, the method and the pattern of the address, and nothing that was sent
 * (OWASP ASVS 4.0.3, 7.1.3 and 7.2.2).
 */
final class Refusals {

	private static final Logger log = LoggerFactory.getLogger("registry.refusals");

	private Refusals() {
	}

	static void note(WebRequest request) {
		Object pattern = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE,
				RequestAttributes.SCOPE_REQUEST);
		log.info("Refused to account {}: {} {}", request.getRemoteUser(), ((ServletWebRequest) request).getHttpMethod(),
				(pattern != null) ? pattern : "at no known address");
	}

}
