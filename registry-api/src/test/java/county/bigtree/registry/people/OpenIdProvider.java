package county.bigtree.registry.people;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.interfaces.RSAPrivateKey;
import java.security.interfaces.RSAPublicKey;
import java.util.concurrent.atomic.AtomicBoolean;

import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.source.ImmutableJWKSet;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.proc.SecurityContext;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.servlet.context.AnnotationConfigServletWebServerApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.security.config.Customizer;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.oauth2.core.AuthorizationGrantType;
import org.springframework.security.oauth2.core.ClientAuthenticationMethod;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.server.authorization.client.InMemoryRegisteredClientRepository;
import org.springframework.security.oauth2.server.authorization.client.RegisteredClient;
import org.springframework.security.oauth2.server.authorization.client.RegisteredClientRepository;
import org.springframework.security.config.annotation.web.configuration.OAuth2AuthorizationServerConfiguration;
import org.springframework.security.oauth2.server.authorization.settings.AuthorizationServerSettings;
import org.springframework.security.oauth2.server.authorization.settings.ClientSettings;
import org.springframework.security.oauth2.server.authorization.token.JwtEncodingContext;
import org.springframework.security.oauth2.server.authorization.token.OAuth2TokenCustomizer;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * An OpenID provider on this machine, in a service of its own. Anybody signs in there as
 * {@code verified:ADDRESS}, {@code unverified:ADDRESS} or {@code silent:ADDRESS}, and it
 * tells of them accordingly. It answers nothing until it is opened.
 */
final class OpenIdProvider implements AutoCloseable {

	static final String CLIENT = "larkmere-register";

	static final String SECRET = "known to two";

	static final String PASSWORD = "the provider's";

	private static final AtomicBoolean answering = new AtomicBoolean();

	private final AnnotationConfigServletWebServerApplicationContext context;

	private OpenIdProvider(AnnotationConfigServletWebServerApplicationContext context) {
		this.context = context;
	}

	static OpenIdProvider start() {
		answering.set(false);
		return new OpenIdProvider(new AnnotationConfigServletWebServerApplicationContext(Setup.class));
	}

	void open() {
		answering.set(true);
	}

	String issuer() {
		return "http://127.0.0.1:" + java.util.Objects.requireNonNull(this.context.getWebServer()).getPort();
	}

	@Override
	public void close() {
		this.context.close();
	}

	/** Only ever started by hand. */
	@TestConfiguration(proxyBeanMethods = false)
	@EnableWebSecurity
	static class Setup {

		@Bean
		TomcatServletWebServerFactory server() throws IOException {
			TomcatServletWebServerFactory server = new TomcatServletWebServerFactory(0);
			server.setRegisterDefaultServlet(true);
			server.setAddress(java.net.InetAddress.getByName("127.0.0.1"));
			return server;
		}

		@Bean
		SecurityFilterChain everything(HttpSecurity http) {
			return http.oauth2AuthorizationServer((server) -> server.oidc(Customizer.withDefaults()))
				.oauth2ResourceServer((userInfo) -> userInfo.jwt(Customizer.withDefaults()))
				.authorizeHttpRequests((requests) -> requests.anyRequest().authenticated())
				.formLogin(Customizer.withDefaults())
				.build();
		}

		@Bean
		@Order(Ordered.HIGHEST_PRECEDENCE)
		OncePerRequestFilter closedUntilOpened() {
			return new OncePerRequestFilter() {

				@Override
				protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response,
						FilterChain chain) throws ServletException, IOException {
					if (answering.get()) {
						request.setCharacterEncoding(StandardCharsets.UTF_8);
						chain.doFilter(request, response);
					}
					else {
						response.setStatus(503);
					}
				}

			};
		}

		@Bean
		UserDetailsService anybody() {
			return (name) -> User.withUsername(name).password("{noop}" + PASSWORD).authorities("anybody").build();
		}

		@Bean
		RegisteredClientRepository clients() {
			return new InMemoryRegisteredClientRepository(RegisteredClient.withId("register")
				.clientId(CLIENT)
				.clientSecret("{noop}" + SECRET)
				.clientAuthenticationMethod(ClientAuthenticationMethod.CLIENT_SECRET_BASIC)
				.authorizationGrantType(AuthorizationGrantType.AUTHORIZATION_CODE)
				.redirectUri(OpenIdIT.ADDRESS + "/sign-in/openid/answer")
				.scope("openid")
				.scope("email")
				.clientSettings(
						ClientSettings.builder().requireProofKey(true).requireAuthorizationConsent(false).build())
				.build());
		}

		@Bean
		OAuth2TokenCustomizer<JwtEncodingContext> whatItTells() {
			return (token) -> {
				String[] name = token.getPrincipal().getName().split(":", 2);
				if ("id_token".equals(token.getTokenType().getValue()) && !"silent".equals(name[0])) {
					token.getClaims().claim("email", name[1]).claim("email_verified", "verified".equals(name[0]));
				}
			};
		}

		@Bean
		JWKSource<SecurityContext> keys() throws GeneralSecurityException {
			KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
			generator.initialize(2048);
			KeyPair pair = generator.generateKeyPair();
			return new ImmutableJWKSet<>(new JWKSet(
					new RSAKey.Builder((RSAPublicKey) pair.getPublic()).privateKey((RSAPrivateKey) pair.getPrivate())
						.keyID("the only one")
						.build()));
		}

		@Bean
		JwtDecoder decoder(JWKSource<SecurityContext> keys) {
			return OAuth2AuthorizationServerConfiguration.jwtDecoder(keys);
		}

		@Bean
		AuthorizationServerSettings settings() {
			return AuthorizationServerSettings.builder().build();
		}

	}

}
