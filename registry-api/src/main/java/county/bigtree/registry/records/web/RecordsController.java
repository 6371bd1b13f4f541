package county.bigtree.registry.records.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.OwnAddresses;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.records.FillFolder;
import county.bigtree.registry.records.FindSubject;
import county.bigtree.registry.records.Folder;
import county.bigtree.registry.records.Subject;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Everything on record about something, as a ZIP archive of JSON files with an index.
 */
@RestController
@Tag(name = "Records", description = "Everything on record about something in one folder, as far as one may see it.")
class RecordsController {

	private static final String ZIP = "application/zip";

	private final FindSubject subjects;

	private final FillFolder filling;

	private final OwnAddresses addresses;

	private final JsonMapper json;

	RecordsController(FindSubject subjects, FillFolder filling, OwnAddresses addresses, JsonMapper json) {
		this.subjects = subjects;
		this.filling = filling;
		this.addresses = addresses;
		this.json = json.rebuild().enable(SerializationFeature.INDENT_OUTPUT).build();
	}

	@GetMapping(path = "/api/v1/records", produces = ZIP)
	@Access(Who.ANYONE)
	@Operation(operationId = "getRecords",
			summary = "What is on record about a tree, a species of a county, a person or some days of a county, with what was withheld and why")
	@ApiResponse(responseCode = "200",
			description = "A ZIP archive of JSON files; index.json tells what is in it and what was withheld",
			content = @Content(mediaType = ZIP, schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> get(
			@Parameter(description = "A tree's id or tag") @RequestParam(required = false) @Nullable String tree,
			@Parameter(description = "A county's key, with a species or with days") @RequestParam(
					required = false) @Nullable String county,
			@RequestParam(required = false) @Nullable String species,
			@Parameter(
					description = "A person's id: one's own, or for coordinators and the administrator") @RequestParam(
							required = false) @Nullable UUID person,
			@RequestParam(required = false) @Nullable LocalDate from,
			@RequestParam(required = false) @Nullable LocalDate to, HttpServletRequest request,
			HttpServletResponse response, @Nullable Actor actor) throws IOException {
		if (Stream.of(tree, species, person, from).filter((one) -> one != null).count() != 1
				|| (county == null) != (species == null && from == null) || (from == null) != (to == null)) {
			throw Problem.of(ProblemType.INVALID_PARAMETER,
					"Ask for one: tree; county and species; person; or county, from and to.");
		}
		Subject subject = (tree != null) ? this.subjects.tree(tree, actor)
				: (person != null) ? this.subjects.person(person, actor) : (county != null && species != null)
						? this.subjects.book(county, species) : this.subjects.days(county, from, to);
		Folder folder = this.filling.fill(subject, actor, (address) -> read(request, response, address));
		return ResponseEntity.ok()
			.contentType(MediaType.parseMediaType(ZIP))
			.header(HttpHeaders.CONTENT_DISPOSITION,
					ContentDisposition.attachment().filename("records.zip").build().toString())
			.body(zip(folder));
	}

	private Object read(HttpServletRequest request, HttpServletResponse response, String address) {
		try {
			Object answer = this.addresses.read(request, response, address);
			Object body = (answer instanceof ResponseEntity<?> whole) ? whole.getBody() : answer;
			return (body != null) ? body : new Elsewhere(address);
		}
		catch (RuntimeException ex) {
			throw ex;
		}
		catch (Exception ex) {
			throw new IllegalStateException("Could not read " + address, ex);
		}
	}

	private byte[] zip(Folder folder) throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
			add(zip, "index.json", Index.of(folder), folder);
			for (var file : folder.files().entrySet()) {
				add(zip, file.getKey(), file.getValue(), folder);
			}
		}
		return bytes.toByteArray();
	}

	private void add(ZipOutputStream zip, String name, Object content, Folder folder) throws IOException {
		ZipEntry entry = new ZipEntry(name);
		entry.setTime(folder.madeAt().toEpochMilli());
		zip.putNextEntry(entry);
		zip.write(this.json.writeValueAsBytes(content));
		zip.closeEntry();
	}

	/**
	 * Says that a tree was merged: its records are those of the tree that is kept.
	 */
	record Elsewhere(String nothingAt) {

	}

	/**
	 * What is in a folder and what is not.
	 */
	record Index(String of, java.time.Instant madeAt, @Nullable String madeFor, java.util.List<String> files,
			java.util.List<Folder.Withheld> withheld) {

		static Index of(Folder folder) {
			return new Index(folder.of(), folder.madeAt(), folder.madeFor(),
					java.util.List.copyOf(folder.files().keySet()), folder.withheld());
		}

	}

}
