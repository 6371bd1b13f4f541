package county.bigtree.registry.pages.paper;

import java.net.URI;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.paper.PaperSize;
import county.bigtree.registry.paper.PrintPaper;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * The certificate of a tree that holds a title today.
 */
@RestController
@Tag(name = "Papers", description = "Papers to print, as tagged PDF.")
class CertificateController {

	private final Certificates certificates;

	private final PrintPaper printing;

	CertificateController(Certificates certificates, PrintPaper printing) {
		this.certificates = certificates;
		this.printing = printing;
	}

	@GetMapping(path = "/trees/{tree}/certificate.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "printCertificate",
			summary = "The certificate of a tree that holds a title today; not found for any other")
	@ApiResponse(responseCode = "200", description = "One side, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	@ApiResponse(responseCode = "307",
			description = "It was merged: the certificate of the tree that is kept stands at the Location",
			content = @Content)
	ResponseEntity<byte[]> certificate(@PathVariable String tree,
			@Parameter(description = "letter, or a4",
					example = "a4") @RequestParam(required = false) @Nullable String paper,
			Api api, @Nullable Actor actor) {
		PaperSize size = PaperSize.of(paper);
		Api.Moved moved = api.moved("/trees/{tree}", tree);
		if (moved != null) {
			return ResponseEntity.status(HttpStatus.TEMPORARY_REDIRECT)
				.location(URI.create("/trees/" + moved.kept() + "/certificate.pdf"))
				.build();
		}
		Certificates.Certificate made = this.certificates.of(api.get("/trees/{tree}", tree), api);
		return (actor == null) ? this.printing.forAnyone("certificate", made.model(), size, made.name())
				: this.printing.forOne("certificate", made.model(), size, made.name());
	}

}
