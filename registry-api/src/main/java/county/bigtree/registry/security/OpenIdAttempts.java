package county.bigtree.registry.security;

import java.util.Map;
import java.util.Objects;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import org.jspecify.annotations.Nullable;

import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrationRepository;
import org.springframework.security.oauth2.client.web.AuthorizationRequestRepository;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationRequest;
import org.springframework.security.oauth2.core.endpoint.OAuth2ParameterNames;
import org.springframework.security.oauth2.core.endpoint.PkceParameterNames;
import org.springframework.security.oauth2.core.oidc.endpoint.OidcParameterNames;

/**
 * What a session remembers between leaving for the provider and coming back: state, nonce
 * and code verifier, as text, since a stored session is read into nothing else. Good for
 * one answer, whether it fits or not.
 */
final class OpenIdAttempts implements AuthorizationRequestRepository<OAuth2AuthorizationRequest> {

	private static final String STATE = "openid-state";

	private static final String NONCE = "openid-nonce";

	private static final String VERIFIER = "openid-verifier";

	private static final String BEGUN = OpenIdAttempts.class.getName() + ".begun";

	private final ClientRegistrationRepository provider;

	OpenIdAttempts(ClientRegistrationRepository provider) {
		this.provider = provider;
	}

	/** Whether the session of the request had left for the provider. */
	static boolean wasBegun(HttpServletRequest request) {
		return request.getAttribute(BEGUN) != null;
	}

	@Override
	public void saveAuthorizationRequest(@Nullable OAuth2AuthorizationRequest attempt, HttpServletRequest request,
			HttpServletResponse response) {
		if (attempt == null) {
			removeAuthorizationRequest(request, response);
			return;
		}
		HttpSession session = request.getSession(true);
		session.setAttribute(STATE, attempt.getState());
		session.setAttribute(NONCE, attempt.getAttribute(OidcParameterNames.NONCE));
		session.setAttribute(VERIFIER, attempt.getAttribute(PkceParameterNames.CODE_VERIFIER));
	}

	@Override
	public @Nullable OAuth2AuthorizationRequest loadAuthorizationRequest(HttpServletRequest request) {
		HttpSession session = request.getSession(false);
		if (session == null || !(session.getAttribute(STATE) instanceof String state)
				|| !(session.getAttribute(NONCE) instanceof String nonce)
				|| !(session.getAttribute(VERIFIER) instanceof String verifier)) {
			return null;
		}
		request.setAttribute(BEGUN, true);
		return state.equals(request.getParameter(OAuth2ParameterNames.STATE)) ? attempt(state, nonce, verifier) : null;
	}

	@Override
	public @Nullable OAuth2AuthorizationRequest removeAuthorizationRequest(HttpServletRequest request,
			HttpServletResponse response) {
		OAuth2AuthorizationRequest attempt = loadAuthorizationRequest(request);
		HttpSession session = request.getSession(false);
		if (session != null) {
			session.removeAttribute(STATE);
			session.removeAttribute(NONCE);
			session.removeAttribute(VERIFIER);
		}
		return attempt;
	}

	private OAuth2AuthorizationRequest attempt(String state, String nonce, String verifier) {
		ClientRegistration known = Objects.requireNonNull(this.provider.findByRegistrationId(OpenIdConfiguration.ID));
		return OAuth2AuthorizationRequest.authorizationCode()
			.authorizationUri(known.getProviderDetails().getAuthorizationUri())
			.clientId(known.getClientId())
			.redirectUri(known.getRedirectUri())
			.scopes(known.getScopes())
			.state(state)
			.attributes((attributes) -> attributes
				.putAll(Map.of(OAuth2ParameterNames.REGISTRATION_ID, OpenIdConfiguration.ID, OidcParameterNames.NONCE,
						nonce, PkceParameterNames.CODE_VERIFIER, verifier)))
			.build();
	}

}
