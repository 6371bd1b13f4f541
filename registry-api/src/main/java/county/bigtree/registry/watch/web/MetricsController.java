package county.bigtree.registry.watch.web;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.http.CacheControl;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * The figures of this node in the text format of Prometheus, which stays the same since
 * version 0.0.4.
 */
@RestController
@Tag(name = "Health")
class MetricsController {

	private static final String FORMAT = "text/plain;version=0.0.4;charset=utf-8";

	private final PrometheusMeterRegistry meters;

	MetricsController(PrometheusMeterRegistry meters) {
		this.meters = meters;
	}

	@GetMapping(path = "/metrics", produces = FORMAT)
	@Access(Who.ADMINISTRATOR)
	@Operation(operationId = "getMetrics", summary = "Figures for a watching program, in the text format of Prometheus")
	ResponseEntity<String> metrics() {
		return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(this.meters.scrape());
	}

}
