package county.bigtree.registry.security;

import java.io.IOException;

import county.bigtree.registry.http.ClientNetwork;
import county.bigtree.registry.http.MapTiles;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Actors;
import county.bigtree.registry.people.SignIn;
import county.bigtree.registry.people.SignInEvent;
import county.bigtree.registry.people.TokenHolder;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.session.PersonSession;
import county.bigtree.registry.session.PublicAddress;
import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.config.observation.SecurityObservationSettings;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.AuthenticationFilter;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.firewall.RequestRejectedHandler;
import org.springframework.web.filter.ForwardedHeaderFilter;

/**
 * Who asks is known by an access token, by the cookie of a session, or by e-mail address
 * and password where a token is made; a token goes before a cookie. Writes that rely on
 * the cookie must bring the token of the session, as CSRF protection. Each endpoint and
 * each page declares who may call it, see {@link EndpointAccess}; outside the API nothing
 * takes more than GET and the POST of a form.
 */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(RequestLimits.class)
class SecurityConfiguration {

	private static final String TOKENS = "/api/v1/tokens";

	private final ProblemAnswers answers;

	private final PublicAddress address;

	private final MapTiles tiles;

	private final LimitNetworks limitNetworks;

	SecurityConfiguration(ProblemAnswers answers, PublicAddress address, MapTiles tiles, NetworkAllowance allowance) {
		this.tiles = tiles;
		this.answers = answers;
		this.address = address;
		this.limitNetworks = new LimitNetworks(allowance, answers);
	}

	/** Figures and traces tell of requests, and not of each filter that they pass. */
	@Bean
	SecurityObservationSettings securityObservations() {
		return SecurityObservationSettings.noObservations();
	}

	/**
	 * What a client says of the host and address it came by is believed only where the
	 * server is told to.
	 */
	@Bean
	@ConditionalOnProperty(name = "server.forward-headers-strategy", havingValue = "none", matchIfMissing = true)
	ForwardedHeaderFilter forwardedHeadersAreDropped() {
		ForwardedHeaderFilter filter = new ForwardedHeaderFilter();
		filter.setRemoveOnly(true);
		return filter;
	}

	/** What no address or header may hold is refused before anything looks at it. */
	@Bean
	RequestRejectedHandler whatIsNoRequest() {
		return (request, response,
				cause) -> this.answers.write(Problem.of(ProblemType.INVALID_PARAMETER,
						"The address, or the name or value of a header or parameter, holds what it may not hold."),
						request, response);
	}

	@Bean
	@Order(1)
	SecurityFilterChain whereTokensAreMade(HttpSecurity http, SignIn signIn, SessionContexts sessions) {
		http.securityMatcher((request) -> HttpMethod.POST.matches(request.getMethod())
				&& TOKENS.equals(request.getRequestURI()) && !sessions.judges(request));
		return common(http).csrf(AbstractHttpConfigurer::disable)
			.sessionManagement((session) -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
			.authenticationManager(byPassword(signIn))
			.httpBasic((basic) -> basic.authenticationEntryPoint(this::signInFailed)
				.authenticationDetailsSource(ClientNetwork::of))
			.exceptionHandling((handling) -> handling.authenticationEntryPoint(this::signInFailed))
			.authorizeHttpRequests((requests) -> requests.anyRequest().authenticated())
			.build();
	}

	@Bean
	@Order(2)
	SecurityFilterChain everywhereElse(HttpSecurity http, Actors actors, SessionContexts sessions) {
		AuthenticationFilter tokens = new AuthenticationFilter(byToken(actors), BearerToken::from);
		tokens.setSuccessHandler((request, response, authentication) -> {
		});
		tokens.setFailureHandler(this::signInNeeded);
		return common(http).addFilterBefore(tokens, AuthorizationFilter.class)
			.securityContext((context) -> context.securityContextRepository(sessions))
			.sessionManagement((session) -> session.sessionCreationPolicy(SessionCreationPolicy.NEVER))
			.csrf((csrf) -> csrf.requireCsrfProtectionMatcher(SecurityConfiguration::mustComeFromHere))
			.exceptionHandling((handling) -> handling
				.authenticationEntryPoint((request, response, cause) -> onlyReads(request, response))
				.accessDeniedHandler(this::refused))
			.authorizeHttpRequests((requests) -> requests.dispatcherTypeMatchers(DispatcherType.ERROR)
				.permitAll()
				.requestMatchers("/api/**")
				.permitAll()
				.requestMatchers(HttpMethod.GET)
				.permitAll()
				.requestMatchers(HttpMethod.HEAD)
				.permitAll()
				.requestMatchers(HttpMethod.POST)
				.permitAll()
				.anyRequest()
				.denyAll())
			.build();
	}

	/** What holds for every chain. */
	HttpSecurity common(HttpSecurity http) {
		return SecurityHeaders.write(http, this.address, this.tiles)
			.addFilterAfter(this.limitNetworks, HeaderWriterFilter.class)
			.addFilterAfter(new FromHere(this.answers, this.address), LimitNetworks.class)
			.requestCache(AbstractHttpConfigurer::disable)
			.logout(AbstractHttpConfigurer::disable);
	}

	private static AuthenticationManager byPassword(SignIn signIn) {
		return (given) -> {
			try {
				return signIn
					.signIn(given.getName(), String.valueOf(given.getCredentials()), String.valueOf(given.getDetails()),
							SignInEvent.PASSWORD_GIVEN)
					.<Authentication>map((Actor actor) -> new ActorAuthentication(actor))
					.orElseThrow(() -> new BadCredentialsException("sign-in failed"));
			}
			catch (Problem problem) {
				throw new HeldBack(problem);
			}
		};
	}

	private static AuthenticationManager byToken(Actors actors) {
		return (given) -> actors.findByToken(String.valueOf(given.getCredentials()))
			.<Authentication>map((TokenHolder holder) -> new ActorAuthentication(holder))
			.orElseThrow(() -> new BadCredentialsException("no such token"));
	}

	/**
	 * What a browser sends with the cookie of its own accord. Signing in is not asked for
	 * it: it takes JSON alone, which no other site can have a browser send unasked.
	 */
	private static boolean mustComeFromHere(HttpServletRequest request) {
		boolean signsIn = HttpMethod.POST.matches(request.getMethod())
				&& "/api/v1/session".equals(request.getRequestURI());
		return CsrfFilter.DEFAULT_CSRF_MATCHER.matches(request) && !signsIn
				&& request.getHeader(HttpHeaders.AUTHORIZATION) == null && PersonSession.id(request).isPresent();
	}

	private void signInFailed(HttpServletRequest request, HttpServletResponse response, AuthenticationException cause)
			throws IOException {
		this.answers.write(
				(cause instanceof HeldBack held) ? held.problem()
						: Problem.of(ProblemType.SIGN_IN_FAILED, "The e-mail address and password do not fit.")
							.withHeader(HttpHeaders.WWW_AUTHENTICATE, "Basic realm=\"registry\", charset=\"UTF-8\""),
				request, response);
	}

	private void signInNeeded(HttpServletRequest request, HttpServletResponse response, AuthenticationException cause)
			throws IOException {
		this.answers.write(EndpointAccess.signInNeeded(), request, response);
	}

	private void refused(HttpServletRequest request, HttpServletResponse response, AccessDeniedException cause)
			throws IOException {
		if (cause instanceof CsrfException) {
			this.answers.write(
					Problem.of(ProblemType.CROSS_SITE,
							"The token of the session is missing: in the header X-CSRF-TOKEN, or in the form."),
					request, response);
		}
		else {
			onlyReads(request, response);
		}
	}

	private void onlyReads(HttpServletRequest request, HttpServletResponse response) throws IOException {
		this.answers.write(Problem.of(ProblemType.METHOD_NOT_ALLOWED, "This method is not taken here.")
			.withHeader(HttpHeaders.ALLOW, "GET, HEAD, POST"), request, response);
	}

	/** Not looked at, because too much failed before. */
	private static final class HeldBack extends AuthenticationException {

		private final transient Problem problem;

		HeldBack(Problem problem) {
			super(problem.detail());
			this.problem = problem;
		}

		Problem problem() {
			return this.problem;
		}

	}

}
