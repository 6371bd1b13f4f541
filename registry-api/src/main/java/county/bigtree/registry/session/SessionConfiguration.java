package county.bigtree.registry.session;

import java.io.ObjectInputFilter;
import java.io.ObjectInputStream;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.convert.ConversionService;
import org.springframework.core.convert.support.GenericConversionService;
import org.springframework.core.serializer.Deserializer;
import org.springframework.core.serializer.support.DeserializingConverter;
import org.springframework.core.serializer.support.SerializingConverter;
import org.springframework.session.jdbc.PostgreSqlJdbcIndexedSessionRepositoryCustomizer;
import org.springframework.session.web.http.CookieSerializer;
import org.springframework.session.web.http.DefaultCookieSerializer;

/**
 * How sessions are kept, and the cookie by which they are known: not readable by scripts,
 * not sent along by other sites. Where the public address is https it is sent over that
 * alone, and bound to the host by its name.
 */
@Configuration(proxyBeanMethods = false)
class SessionConfiguration {

	/** The only classes that a stored session is read into. */
	private static final ObjectInputFilter KNOWN = ObjectInputFilter.Config
		.createFilter("maxdepth=5;java.lang.*;org.springframework.security.web.csrf.DefaultCsrfToken;!*");

	@Bean
	CookieSerializer sessionCookie(PublicAddress address) {
		DefaultCookieSerializer cookie = new DefaultCookieSerializer();
		cookie.setCookieName(address.isSecure() ? "__Host-session" : "session");
		cookie.setUseSecureCookie(address.isSecure());
		cookie.setCookiePath("/");
		cookie.setUseHttpOnlyCookie(true);
		cookie.setSameSite("Lax");
		return cookie;
	}

	/** Two requests may write one attribute at once. */
	@Bean
	PostgreSqlJdbcIndexedSessionRepositoryCustomizer onPostgres() {
		return new PostgreSqlJdbcIndexedSessionRepositoryCustomizer();
	}

	@Bean
	ConversionService springSessionConversionService() {
		GenericConversionService conversion = new GenericConversionService();
		conversion.addConverter(Object.class, byte[].class, new SerializingConverter());
		conversion.addConverter(byte[].class, Object.class, new DeserializingConverter(knownOnly()));
		return conversion;
	}

	static Deserializer<Object> knownOnly() {
		return (in) -> {
			ObjectInputStream objects = new ObjectInputStream(in);
			objects.setObjectInputFilter(KNOWN);
			try {
				return objects.readObject();
			}
			catch (ClassNotFoundException ex) {
				throw new java.io.InvalidClassException("a session holds what is not known here");
			}
		};
	}

}
