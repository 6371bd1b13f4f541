package county.bigtree.registry.health.web;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.health.CheckReadiness;
import county.bigtree.registry.health.Readiness;
import county.bigtree.registry.health.StopNotice;
import county.bigtree.registry.notice.StuckNotices;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Liveness and readiness.
 */
@RestController
@Tag(name = "Health", description = "For whoever watches over the service.")
class HealthController {

	private final CheckReadiness checkReadiness;

	private final StuckNotices notices;

	private final StopNotice stop;

	HealthController(CheckReadiness checkReadiness, StuckNotices notices, StopNotice stop) {
		this.stop = stop;
		this.checkReadiness = checkReadiness;
		this.notices = notices;
	}

	@GetMapping("/healthz")
	@Access(Who.ANYONE)
	@Operation(operationId = "getHealth", summary = "Whether the service lives")
	ResponseEntity<Health> health() {
		return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(new Health("up"));
	}

	@GetMapping("/readyz")
	@Access(Who.ANYONE)
	@Operation(operationId = "getReadiness", summary = "Whether the service can do its work; 503 where it can't")
	@ApiResponse(responseCode = "200", description = "It can")
	@ApiResponse(responseCode = "503", description = "It can't")
	ResponseEntity<Ready> readiness() {
		Readiness readiness = this.checkReadiness.check();
		Ready ready = Ready.from(readiness, readiness.isReady() ? this.notices.state() : "unknown",
				this.stop.isStopping());
		return ResponseEntity.status("ready".equals(ready.status()) ? HttpStatus.OK : HttpStatus.SERVICE_UNAVAILABLE)
			.cacheControl(CacheControl.noStore())
			.body(ready);
	}

	/** Always {@code up}: what does not live does not answer. */
	record Health(String status) {

	}

	/**
	 * What the service needs, and whether it is there.
	 *
	 * @param status {@code ready}, {@code not-ready}, or {@code stopping} where it was
	 * told to stop
	 * @param database {@code reachable} or {@code unreachable}
	 * @param migrations {@code done} or {@code missing}
	 * @param notices {@code flowing} by e-mail; {@code stuck} where some could not be
	 * sent for half an hour; {@code off} without a mail server; {@code unknown} without a
	 * database. The service is ready with all of them
	 */
	record Ready(String status, String database, String migrations, String notices) {

		static Ready from(Readiness readiness, String notices, boolean stopping) {
			return new Ready(stopping ? "stopping" : readiness.isReady() ? "ready" : "not-ready",
					readiness.databaseReachable() ? "reachable" : "unreachable",
					readiness.migrationsDone() ? "done" : "missing", notices);
		}

	}

}
