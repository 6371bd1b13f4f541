package county.bigtree.registry.watch;

import county.bigtree.registry.problem.RequestName;
import io.micrometer.common.KeyValue;
import io.micrometer.common.KeyValues;

import org.springframework.http.server.observation.DefaultServerRequestObservationConvention;
import org.springframework.http.server.observation.ServerRequestObservationContext;
import org.springframework.stereotype.Component;

/**
 * What figures and traces say of a request: method, route, status, and by which name the
 * log and problems know it. The address as it was asked is left out, for it may hold what
 * is somebody's: a search, a one-time link.
 */
@Component
class RequestConvention extends DefaultServerRequestObservationConvention {

	@Override
	public String getContextualName(ServerRequestObservationContext context) {
		return method(context).getValue() + " " + uri(context).getValue();
	}

	@Override
	public KeyValues getHighCardinalityKeyValues(ServerRequestObservationContext context) {
		String name = (context.getCarrier() != null) ? RequestName.of(context.getCarrier()) : null;
		return (name != null) ? KeyValues.of(KeyValue.of("request", name)) : KeyValues.empty();
	}

}
