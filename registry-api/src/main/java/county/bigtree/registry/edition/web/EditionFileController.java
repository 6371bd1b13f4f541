package county.bigtree.registry.edition.web;

import java.util.Locale;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.edition.Edition;
import county.bigtree.registry.edition.EditionFiles;
import county.bigtree.registry.edition.EditionFiles.Form;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * The files of editions: to the byte as they were published, unless trees were taken out
 * of them since.
 */
@RestController
@Tag(name = "Editions", description = "A county's published lists, kept as they were published.")
class EditionFileController {

	private final Published published;

	EditionFileController(Published published) {
		this.published = published;
	}

	@GetMapping(path = "/exports/editions/{edition}/rankings.csv", produces = "text/csv")
	@Access(Who.ANYONE)
	@Operation(operationId = "exportEdition",
			summary = "An edition as CSV; its name says whether it is to the byte as it was published")
	ResponseEntity<byte[]> csv(@PathVariable UUID edition) {
		return file(edition, Form.CSV, "text/csv;charset=utf-8");
	}

	@GetMapping(path = "/exports/editions/{edition}/rankings.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "printEdition",
			summary = "An edition as tagged PDF; its name says whether it is to the byte as it was published")
	@ApiResponse(responseCode = "200", description = "The list, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> pdf(@PathVariable UUID edition) {
		return file(edition, Form.PDF, MediaType.APPLICATION_PDF_VALUE);
	}

	private ResponseEntity<byte[]> file(UUID id, Form form, String type) {
		Edition edition = this.published.get(id);
		EditionFiles.Given file = this.published.file(edition, form);
		String name = "%s-%s%s.%s".formatted(edition.county(), edition.name().replaceAll("[^\\p{Alnum}-]+", "-"),
				file.asPublished() ? "" : "-as-shown-today", form.name().toLowerCase(Locale.ROOT));
		return ResponseEntity.ok()
			.contentType(MediaType.parseMediaType(type))
			.header(HttpHeaders.CONTENT_DISPOSITION, ContentDisposition.attachment().filename(name).build().toString())
			.body(file.bytes());
	}

}
