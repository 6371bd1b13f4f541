package county.bigtree.registry.transfer.web;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.transfer.OlderRecords;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * Older records of trees.
 */
@RestController
@Tag(name = "Imports", description = "Files of older records, taken into a county.")
class OlderRecordController {

	private final OlderRecords records;

	OlderRecordController(OlderRecords records) {
		this.records = records;
	}

	@GetMapping("/api/v1/trees/{tree}/older-record")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getOlderRecord", summary = "What the file that brought a tree says, for coordinators")
	OlderRecordJson get(@PathVariable String tree, Actor actor) {
		return OlderRecordJson.from(this.records.get(actor, tree));
	}

	/**
	 * An older record.
	 *
	 * @param importId the import that brought it
	 * @param row its number in the file
	 */
	record OlderRecordJson(UUID importId, int row, @Nullable String fileTag, @Nullable String owner,
			@Nullable String contact, @Nullable String finder, @Nullable String visitNotes) {

		static OlderRecordJson from(OlderRecords.OlderRecord record) {
			return new OlderRecordJson(record.importId(), record.rowNumber(), record.fileTag(), record.owner(),
					record.contact(), record.finder(), record.visitNotes());
		}

	}

}
