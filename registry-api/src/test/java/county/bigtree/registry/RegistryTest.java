package county.bigtree.registry;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.test.context.ContextConfiguration;

/**
 * A test against the whole service on a real database. All tests of a run share one
 * service and its database, so each brings its own people, counties and trees.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT,
		properties = { "registry.limits.network-per-second=0", "registry.limits.account-per-second=0",
				"registry.limits.letters-per-hour=0", "registry.sign-in.failures-of-network=1000",
				"registry.watch.count-work=false", "registry.upkeep.on=false" })
@AutoConfigureMockMvc
@ContextConfiguration(initializers = RegistryTestDatabase.class)
public @interface RegistryTest {

}
