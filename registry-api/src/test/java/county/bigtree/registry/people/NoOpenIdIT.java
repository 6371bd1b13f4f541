package county.bigtree.registry.people;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.security.oauth2.client.registration.ClientRegistrationRepository;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class NoOpenIdIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private ApplicationContext context;

	@Test
	void hasNoWayToAProviderWhereNoneIsConfigured() throws Exception {
		assertThat(this.context.getBeansOfType(SignInByProvider.class)).isEmpty();
		assertThat(this.context.getBeansOfType(ClientRegistrationRepository.class)).isEmpty();
		assertThat(this.context.getBeanDefinitionNames()).noneMatch((name) -> name.toLowerCase().contains("openid"));
		for (String path : new String[] { "/sign-in/openid", "/sign-in/openid/answer?code=x&state=y",
				"/oauth2/authorization/openid", "/login/oauth2/code/openid", "/login" }) {
			this.mvc.perform(get(path)).andExpect(status().isNotFound());
		}
	}

}
