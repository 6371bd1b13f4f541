package county.bigtree.registry.security;

import java.io.IOException;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Actors;
import county.bigtree.registry.people.SignIn;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.AuthenticationFilter;

/**
 * Credentials come with each request: an access token, or e-mail address and password
 * where a token is made. No session is kept and no cookie heeded, so that there is
 * nothing for another site to ride on. Nothing outside the API takes more than GET; in it
 * each endpoint declares who may call it, see {@link EndpointAccess}.
 */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {

	private static final String TOKENS = "/api/v1/tokens";

	private final ProblemAnswers answers;

	SecurityConfiguration(ProblemAnswers answers) {
		this.answers = answers;
	}

	@Bean
	@Order(1)
	SecurityFilterChain whereTokensAreMade(HttpSecurity http, SignIn signIn) {
		http.securityMatcher(
				(request) -> HttpMethod.POST.matches(request.getMethod()) && TOKENS.equals(request.getRequestURI()));
		return common(http).authenticationManager(byPassword(signIn))
			.httpBasic((basic) -> basic.authenticationEntryPoint(this::signInFailed))
			.exceptionHandling((handling) -> handling.authenticationEntryPoint(this::signInFailed))
			.authorizeHttpRequests((requests) -> requests.anyRequest().authenticated())
			.build();
	}

	@Bean
	@Order(2)
	SecurityFilterChain everywhereElse(HttpSecurity http, Actors actors) {
		AuthenticationFilter tokens = new AuthenticationFilter(byToken(actors), BearerToken::from);
		tokens.setSuccessHandler((request, response, authentication) -> {
		});
		tokens.setFailureHandler(this::signInNeeded);
		return common(http).addFilterBefore(tokens, AuthorizationFilter.class)
			.exceptionHandling((handling) -> handling
				.authenticationEntryPoint((request, response, cause) -> onlyReads(request, response))
				.accessDeniedHandler((request, response, cause) -> onlyReads(request, response)))
			.authorizeHttpRequests((requests) -> requests.dispatcherTypeMatchers(DispatcherType.ERROR)
				.permitAll()
				.requestMatchers("/api/**")
				.permitAll()
				.requestMatchers(HttpMethod.GET)
				.permitAll()
				.requestMatchers(HttpMethod.HEAD)
				.permitAll()
				.anyRequest()
				.denyAll())
			.build();
	}

	private static HttpSecurity common(HttpSecurity http) {
		return http.csrf(AbstractHttpConfigurer::disable)
			.requestCache(AbstractHttpConfigurer::disable)
			.logout(AbstractHttpConfigurer::disable)
			.sessionManagement((session) -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
			.headers((headers) -> headers.cacheControl(HeadersConfigurer.CacheControlConfig::disable));
	}

	private static AuthenticationManager byPassword(SignIn signIn) {
		return (given) -> signIn.signIn(given.getName(), String.valueOf(given.getCredentials()))
			.<Authentication>map(ActorAuthentication::new)
			.orElseThrow(() -> new BadCredentialsException("sign-in failed"));
	}

	private static AuthenticationManager byToken(Actors actors) {
		return (given) -> actors.findByToken(String.valueOf(given.getCredentials()))
			.<Authentication>map((Actor actor) -> new ActorAuthentication(actor))
			.orElseThrow(() -> new BadCredentialsException("no such token"));
	}

	private void signInFailed(HttpServletRequest request, HttpServletResponse response, AuthenticationException cause)
			throws IOException {
		this.answers.write(
				Problem.of(ProblemType.SIGN_IN_FAILED, "The e-mail address and password do not fit.")
					.withHeader(HttpHeaders.WWW_AUTHENTICATE, "Basic realm=\"registry\", charset=\"UTF-8\""),
				request, response);
	}

	private void signInNeeded(HttpServletRequest request, HttpServletResponse response, AuthenticationException cause)
			throws IOException {
		this.answers.write(EndpointAccess.signInNeeded(), request, response);
	}

	private void onlyReads(HttpServletRequest request, HttpServletResponse response) throws IOException {
		this.answers.write(Problem.of(ProblemType.METHOD_NOT_ALLOWED, "This method is not taken here.")
			.withHeader(HttpHeaders.ALLOW, "GET, HEAD"), request, response);
	}

}
