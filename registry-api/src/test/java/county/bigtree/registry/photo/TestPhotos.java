package county.bigtree.registry.photo;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.image.TestPictures;

import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

/**
 * Sends photos over HTTP for tests.
 */
public final class TestPhotos {

	private TestPhotos() {
	}

	/** Sends a small one of the whole tree, and answers its id. */
	public static String sent(TestTrees trees, String address, TestPerson person, String... names) throws Exception {
		return id(send(trees, address, TestPictures.jpeg(400, 300), person, names));
	}

	/**
	 * Sends a file as a photo of the whole tree, unless told otherwise.
	 * @param names of further parts, each followed by its text
	 */
	public static ResultActions send(TestTrees trees, String address, byte[] file, TestPerson person, String... names)
			throws Exception {
		return trees.send(form(address, file, names), person);
	}

	public static MockMultipartHttpServletRequestBuilder form(String address, byte[] file, String... names) {
		MockMultipartHttpServletRequestBuilder form = multipart(address).part(new MockPart("file", "photo.jpg", file));
		boolean shown = false;
		for (int index = 0; index < names.length; index += 2) {
			form.part(new MockPart(names[index], names[index + 1].getBytes(UTF_8)));
			shown |= names[index].equals("shows");
		}
		if (!shown) {
			form.part(new MockPart("shows", "whole".getBytes(UTF_8)));
		}
		return form;
	}

	public static String id(ResultActions sent) throws Exception {
		String answer = sent.andReturn().getResponse().getContentAsString(UTF_8);
		if (sent.andReturn().getResponse().getStatus() != 201) {
			throw new AssertionError("The photo was not taken: " + answer);
		}
		return JsonPath.read(answer, "$.id");
	}

}
