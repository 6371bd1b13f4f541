package county.bigtree.registry.security;

import java.time.Clock;
import java.util.function.Supplier;

import county.bigtree.registry.people.SignInByProvider;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.session.PublicAddress;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.ObjectPostProcessor;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.Authentication;
import org.springframework.security.oauth2.client.OAuth2AuthorizedClient;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrationRepository;
import org.springframework.security.oauth2.client.registration.ClientRegistrations;
import org.springframework.security.oauth2.client.web.OAuth2AuthorizationRequestRedirectFilter;
import org.springframework.security.oauth2.client.web.OAuth2AuthorizedClientRepository;
import org.springframework.security.oauth2.core.ClientAuthenticationMethod;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.util.function.SingletonSupplier;

/**
 * Signing in by an OpenID provider, where one is configured: authorization code with
 * state, nonce and code challenge (OpenID Connect Core 1.0, section 3.1; RFC 7636). The
 * provider is first asked what it offers when somebody wants in, so that the register
 * starts without it. Its tokens are thrown away once they have said who it is.
 */
@Configuration(proxyBeanMethods = false)
@ConditionalOnProperty("registry.openid.issuer")
@EnableConfigurationProperties(OpenIdSettings.class)
class OpenIdConfiguration {

	static final String ID = "openid";

	private static final String LEAVING = "/sign-in";

	private static final String ANSWER = LEAVING + "/" + ID + "/answer";

	private final SecurityConfiguration security;

	private final OpenIdAnswers answers;

	private final ClientRegistrationRepository provider;

	OpenIdConfiguration(SecurityConfiguration security, OpenIdSettings settings, PublicAddress address,
			SignInByProvider signIn, ProblemAnswers answers, Clock clock) {
		if (!address.isKnown()) {
			throw new IllegalArgumentException(
					"registry.openid needs registry.public-address, to which the provider sends people back");
		}
		this.security = security;
		this.answers = new OpenIdAnswers(signIn, answers, clock, address.of("/"));
		Supplier<ClientRegistration> discovered = SingletonSupplier.of(() -> discover(settings, address));
		this.provider = (id) -> ID.equals(id) ? discovered.get() : null;
	}

	@Bean
	@Order(0)
	SecurityFilterChain byOpenId(HttpSecurity http, SessionContexts sessions) {
		http.securityMatcher((request) -> HttpMethod.GET.matches(request.getMethod())
				&& ((LEAVING + "/" + ID).equals(request.getRequestURI()) || ANSWER.equals(request.getRequestURI())));
		return this.security.common(http)
			.securityContext((context) -> context.securityContextRepository(sessions))
			// PersonSession begins a new one. An id changed before would leave the old
			// one stored, to be taken up again.
			.sessionManagement((session) -> session.sessionFixation((fixation) -> fixation.none()))
			.oauth2Login((login) -> login.clientRegistrationRepository(this.provider)
				.authorizedClientRepository(new NoTokens())
				.loginPage(LEAVING + "/" + ID)
				.loginProcessingUrl(ANSWER)
				.authorizationEndpoint((leaving) -> leaving.baseUri(LEAVING)
					.authorizationRequestRepository(new OpenIdAttempts(this.provider)))
				.successHandler(this.answers::cameBack)
				.failureHandler(this.answers::wentWrong)
				.withObjectPostProcessor(sayingIfNotReached()))
			.authorizeHttpRequests((requests) -> requests.anyRequest().permitAll())
			.build();
	}

	private ObjectPostProcessor<OAuth2AuthorizationRequestRedirectFilter> sayingIfNotReached() {
		return new ObjectPostProcessor<>() {

			@Override
			public <O extends OAuth2AuthorizationRequestRedirectFilter> O postProcess(O filter) {
				filter.setAuthenticationFailureHandler(OpenIdConfiguration.this.answers::notReached);
				return filter;
			}

		};
	}

	private static ClientRegistration discover(OpenIdSettings settings, PublicAddress address) {
		return ClientRegistrations.fromOidcIssuerLocation(String.valueOf(settings.issuer()))
			.registrationId(ID)
			.clientId(String.valueOf(settings.clientId()))
			.clientSecret(String.valueOf(settings.clientSecret()))
			.clientAuthenticationMethod(ClientAuthenticationMethod.CLIENT_SECRET_BASIC)
			.redirectUri(address.of(ANSWER))
			.scope("openid", "email")
			.clientSettings(ClientRegistration.ClientSettings.builder().requireProofKey(true).build())
			.build();
	}

	/** The register asks the provider for nothing on anybody's behalf. */
	private static final class NoTokens implements OAuth2AuthorizedClientRepository {

		@Override
		public <T extends OAuth2AuthorizedClient> @Nullable T loadAuthorizedClient(String id, Authentication principal,
				HttpServletRequest request) {
			return null;
		}

		@Override
		public void saveAuthorizedClient(OAuth2AuthorizedClient client, Authentication principal,
				HttpServletRequest request, HttpServletResponse response) {
			// Nothing is kept.
		}

		@Override
		public void removeAuthorizedClient(String id, Authentication principal, HttpServletRequest request,
				HttpServletResponse response) {
			// Nothing was kept.
		}

	}

}
