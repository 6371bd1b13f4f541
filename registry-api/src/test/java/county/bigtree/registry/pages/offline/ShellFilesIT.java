package county.bigtree.registry.pages.offline;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.RegistryTest;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a browser fetches to install the register, all of one release.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class ShellFilesIT {

	private static final Pattern FILE = Pattern.compile("\"(/v[0-9a-f]{12}/[^\"]+)\"");

	@Autowired
	private MockMvc mvc;

	@Autowired
	private ShellVersion version;

	@Test
	void namesEachFileOfThisReleaseInTheWorker() throws Exception {
		String worker = this.mvc.perform(get("/service-worker.js"))
			.andExpect(status().isOk())
			.andExpect(header().string("Cache-Control", "no-cache"))
			.andExpect(content().contentTypeCompatibleWith("text/javascript"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(worker).contains("RELEASE = \"" + this.version + "\"").doesNotContain("'VERSION'", "'FILES'");
		Matcher files = FILE.matcher(worker);
		int found = 0;
		while (files.find()) {
			found++;
			this.mvc.perform(get(files.group(1)))
				.andExpect(status().isOk())
				.andExpect(header().string("Cache-Control", "max-age=31536000, public, immutable"));
		}
		assertThat(found).isEqualTo(this.version.addresses().size()).isGreaterThan(20);
		assertThat(worker).contains("/style/register.css", "/script/outbox.js", "/script/filing.js");
	}

	@Test
	void hasPagesNameTheFilesOfTheirRelease() throws Exception {
		String page = this.mvc.perform(get("/measure"))
			.andExpect(header().string("Registry-Shell", this.version.toString()))
			.andExpect(header().string("Registry-Person", "nobody"))
			.andExpect(header().string("Content-Security-Policy", Matchers.containsString("worker-src 'self'")))
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(page)
			.contains(this.version.path() + "/script/measure.js", this.version.path() + "/style/register.css")
			.doesNotContain("\"/script/", "\"/style/");
	}

	@Test
	void knowsNoFileOfAnotherRelease() throws Exception {
		this.mvc.perform(get("/v000000000000/script/filing.js")).andExpect(status().isNotFound());
	}

	@Test
	void describesTheAppByIconsOfItsOwn() throws Exception {
		String manifest = this.mvc.perform(get("/manifest.webmanifest"))
			.andExpect(status().isOk())
			.andExpect(content().contentTypeCompatibleWith("application/manifest+json"))
			.andExpect(jsonPath("$.start_url").value("/offline"))
			.andExpect(jsonPath("$.display").value("standalone"))
			.andExpect(jsonPath("$.icons[?(@.purpose == 'maskable')].sizes").value("512x512"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		Matcher icons = FILE.matcher(manifest);
		while (icons.find()) {
			this.mvc.perform(get(icons.group(1))).andExpect(status().isOk());
		}
	}

}
