package county.bigtree.registry.photo.web;

import java.io.IOException;
import java.net.URI;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.photo.AddPhoto;
import county.bigtree.registry.photo.PhotoBody;
import county.bigtree.registry.photo.ShowPhotos;
import county.bigtree.registry.photo.image.ProcessPictures;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.Part;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Photos, sent one by one and shown to those who may see them.
 */
@RestController
@Tag(name = "Photos", description = "Photos of trees, private until somebody of the county passes them.")
class PhotoController {

	private static final String LIST = "photos";

	private final AddPhoto adding;

	private final ShowPhotos showing;

	PhotoController(AddPhoto adding, ShowPhotos showing) {
		this.adding = adding;
		this.showing = showing;
	}

	@PostMapping(path = "/api/v1/trees/{tree}/photos", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "addTreePhoto",
			summary = "Send a photo of a tree: JPEG, PNG or WebP; what the camera noted is not kept")
	ResponseEntity<PhotoJson> addToTree(@PathVariable String tree,
			@Parameter(schema = @Schema(type = "string", format = "binary")) @RequestPart("file") Part file,
			@Parameter(schema = @Schema(type = "string")) @RequestPart("shows") Part shows,
			@Parameter(schema = @Schema(type = "string", format = "date")) @RequestPart(name = "takenOn",
					required = false) @Nullable Part takenOn,
			@Parameter(schema = @Schema(type = "string")) @RequestPart(name = "text",
					required = false) @Nullable Part text,
			@Parameter(schema = @Schema(type = "string")) @RequestPart(name = "credit",
					required = false) @Nullable Part credit,
			Actor actor) throws IOException {
		PhotoBody body = PhotoParts.body(shows, takenOn, text, credit);
		return added(this.adding.ofTree(actor, tree, body, PhotoParts.file(file)), actor);
	}

	@PostMapping(path = "/api/v1/measurements/{id}/photos", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "addMeasurementPhoto",
			summary = "Send a photo of a measurement that you filed: JPEG, PNG or WebP; what the camera noted is not kept")
	ResponseEntity<PhotoJson> addToMeasurement(@PathVariable UUID id,
			@Parameter(schema = @Schema(type = "string", format = "binary")) @RequestPart("file") Part file,
			@Parameter(schema = @Schema(type = "string")) @RequestPart("shows") Part shows,
			@Parameter(schema = @Schema(type = "string", format = "date")) @RequestPart(name = "takenOn",
					required = false) @Nullable Part takenOn,
			@Parameter(schema = @Schema(type = "string")) @RequestPart(name = "text",
					required = false) @Nullable Part text,
			@Parameter(schema = @Schema(type = "string")) @RequestPart(name = "credit",
					required = false) @Nullable Part credit,
			Actor actor) throws IOException {
		PhotoBody body = PhotoParts.body(shows, takenOn, text, credit);
		return added(this.adding.ofMeasurement(actor, id, body, PhotoParts.file(file)), actor);
	}

	@GetMapping("/api/v1/trees/{tree}/photos")
	@Access(Who.ANYONE)
	@Operation(operationId = "listTreePhotos",
			summary = "The photos of a tree: those that everybody may see, one's own, and all for the county's verifiers")
	Page<PhotoJson> ofTree(@PathVariable String tree, @Nullable Actor actor) {
		return Page.whole(this.showing.ofTree(tree, actor).stream().map(PhotoJson::from).toList());
	}

	@GetMapping("/api/v1/measurements/{id}/photos")
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "listMeasurementPhotos",
			summary = "The photos of a measurement, for who filed it and the county's verifiers")
	Page<PhotoJson> ofMeasurement(@PathVariable UUID id, Actor actor) {
		return Page.whole(this.showing.ofMeasurement(id, actor).stream().map(PhotoJson::from).toList());
	}

	@GetMapping("/api/v1/counties/{county}/photos")
	@Access(Who.VERIFIER)
	@Operation(operationId = "listCountyPhotos",
			summary = "The photos of a county's trees, in the order of their coming")
	Page<PhotoJson> ofCounty(@PathVariable String county,
			@Parameter(description = "Only those that are waiting, passed, refused or withdrawn",
					example = "waiting") @RequestParam(required = false) @Nullable String status,
			Paging paging) {
		return Page.cut(this.showing.ofCounty(county, status, after(paging), paging.oneMore()), paging, PhotoJson::from,
				(last) -> Cursor.of(LIST, last.photo().id()));
	}

	@GetMapping("/api/v1/people/me/photos")
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "listOwnPhotos", summary = "The photos that you sent")
	Page<PhotoJson> own(Paging paging, Actor actor) {
		return Page.cut(this.showing.own(actor, after(paging), paging.oneMore()), paging, PhotoJson::from,
				(last) -> Cursor.of(LIST, last.photo().id()));
	}

	@GetMapping("/api/v1/photos/{id}")
	@Access(Who.ANYONE)
	@Operation(operationId = "getPhoto", summary = "What is known of a photo, and where its pictures are")
	PhotoJson get(@PathVariable UUID id, @Nullable Actor actor) {
		return PhotoJson.from(this.showing.get(id, actor));
	}

	@GetMapping(path = "/api/v1/photos/{id}/image", produces = MediaType.IMAGE_JPEG_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "getPhotoImage", summary = "The picture of a photo")
	@ApiResponse(responseCode = "200", description = "The picture, as JPEG without metadata",
			content = @Content(mediaType = MediaType.IMAGE_JPEG_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> image(@PathVariable UUID id,
			@Parameter(description = "320, 800 or 1600 pixels; left out for the largest, of at most 2048 a side",
					example = "800") @RequestParam(required = false) @Nullable Integer width,
			@Nullable Actor actor) {
		if (width != null && !ProcessPictures.WIDTHS.contains(width)) {
			throw Problem.of(ProblemType.INVALID_PARAMETER, "The width must be 320, 800 or 1600.")
				.with("parameter", "width");
		}
		return ResponseEntity.ok().contentType(MediaType.IMAGE_JPEG).body(this.showing.picture(id, width, actor));
	}

	private static UUID after(Paging paging) {
		return paging.cursor(LIST, 1).map((cursor) -> cursor.uuid(0)).orElse(new UUID(0, 0));
	}

	private ResponseEntity<PhotoJson> added(UUID id, Actor actor) {
		return ResponseEntity.created(URI.create("/api/v1/photos/" + id))
			.body(PhotoJson.from(this.showing.get(id, actor)));
	}

}
