package county.bigtree.registry.standby;

import java.sql.SQLException;
import java.util.Set;
import java.util.function.Consumer;

import county.bigtree.registry.http.ReadsElsewhere;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.ModelAndView;

/**
 * Which reads may be answered by a standby: those listed here, by who is not signed in
 * and brings neither credentials nor a cookie. What a standby fails to answer is asked of
 * the primary.
 *
 * <p>
 * Standings and titles are not listed: they are kept by the primary's versions, whose
 * midnights are the primary's.
 */
class StandbyReads implements ReadsElsewhere {

	/** Of the endpoints, as they are mapped. */
	static final Set<String> LISTED = Set.of("/exports/{county}/standings.csv", "/exports/{county}/trees.csv",
			"/exports/{county}/scores.csv", "/exports/{county}/trees.geojson", "/exports/{county}/dwca.zip",
			"/exports/editions/{edition}/rankings.csv", "/api/v1/editions/{edition}/list",
			"/api/v1/editions/{edition}/changes", "/ogc/collections/trees/items", "/ogc/collections/titles/items",
			"/titles.atom", "/counties/{county}/titles.atom", "/api/v1/counties/{county}/species/{species}/story",
			"/api/v1/trees/{tree}/story", "/api/v1/trees/{tree}/scores", "/api/v1/trees",
			"/api/v1/species/{species}/standing");

	private final ThreadLocal<@Nullable UnderWay> underWay = new ThreadLocal<>();

	private final Consumer<SQLException> failures;

	/**
	 * Tells of what failed there.
	 */
	StandbyReads(Consumer<SQLException> failures) {
		this.failures = failures;
	}

	@Override
	public @Nullable ModelAndView call(HttpServletRequest request, HttpServletResponse response, Handling handling,
			Runnable clear) throws Exception {
		if (!mayGo(request)) {
			return handling.handle();
		}
		UnderWay read = new UnderWay();
		this.underWay.set(read);
		try {
			return handling.handle();
		}
		catch (Exception ex) {
			SQLException failure = ofTheDatabase(ex);
			if (!read.usesStandby || failure == null || response.isCommitted()) {
				throw ex;
			}
			this.failures.accept(failure);
		}
		finally {
			this.underWay.remove();
		}
		clear.run();
		return handling.handle();
	}

	static boolean mayGo(HttpServletRequest request) {
		boolean reads = "GET".equals(request.getMethod()) || "HEAD".equals(request.getMethod());
		return reads && request.getUserPrincipal() == null && request.getHeader(HttpHeaders.AUTHORIZATION) == null
				&& request.getHeader(HttpHeaders.COOKIE) == null
				&& request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE) instanceof String address
				&& LISTED.contains(address);
	}

	private static @Nullable SQLException ofTheDatabase(Throwable failure) {
		for (Throwable at = failure; at != null; at = at.getCause()) {
			if (at instanceof SQLException found) {
				return found;
			}
		}
		return null;
	}

	/** Whether a listed read is under way in this thread. */
	boolean isUnderWay() {
		return this.underWay.get() != null;
	}

	void usesStandby() {
		UnderWay read = this.underWay.get();
		if (read != null) {
			read.usesStandby = true;
		}
	}

	/** A read that may go to a standby. */
	private static final class UnderWay {

		private boolean usesStandby;

	}

}
