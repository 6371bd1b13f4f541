package county.bigtree.registry.readcache;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.security.NetworkAllowance;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.core.annotation.Order;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.dao.DataAccessException;
import org.springframework.session.web.http.SessionRepositoryFilter;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * Answers public reads of standings ahead of everything else, from bytes that were
 * answered before to the same question at the same version of the register. All other
 * requests, and those that are not kept or not kept of this version, go the long way. A
 * question that many ask at once is answered once for all of them.
 *
 * <p>
 * The version is read before the answer is made, so that an answer may be newer than the
 * version it is kept under, and never older.
 */
@Component
@Order(SessionRepositoryFilter.DEFAULT_ORDER - 1)
@EnableConfigurationProperties(ReadCacheSettings.class)
class CachedReads extends OncePerRequestFilter {

	private static final long LONGEST_WAIT_SECONDS = 5;

	private final RegisterVersions versions;

	private final NetworkAllowance allowance;

	private final RegisterClock clock;

	private final boolean off;

	private final Cache<String, KeptAnswer> kept;

	private final ConcurrentHashMap<Question, CompletableFuture<Optional<KeptAnswer>>> asked = new ConcurrentHashMap<>();

	CachedReads(RegisterVersions versions, NetworkAllowance allowance, RegisterClock clock,
			ReadCacheSettings settings) {
		this.versions = versions;
		this.allowance = allowance;
		this.clock = clock;
		this.off = settings.size().toBytes() == 0;
		this.kept = Caffeine.newBuilder()
			.maximumWeight(settings.size().toBytes())
			.weigher((String key, KeptAnswer answer) -> key.length() + answer.bytes())
			.build();
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		Optional<PublicRead> read = this.off ? Optional.empty() : PublicRead.of(request);
		String version = read.map(this::version).orElse(null);
		if (read.isEmpty() || version == null) {
			chain.doFilter(request, response);
			return;
		}
		KeptAnswer answer = this.kept.getIfPresent(read.get().key());
		if (answer != null && answer.version().equals(version)) {
			sendOrRefuse(answer, request, response, chain);
		}
		else if ("HEAD".equals(request.getMethod())) {
			chain.doFilter(request, response);
		}
		else {
			askOnce(new Question(read.get().key(), version), request, response, chain);
		}
	}

	/** Null where it can't be told: the long way says what is wrong. */
	private @Nullable String version(PublicRead read) {
		try {
			return this.clock.replayed().isPresent() ? null : this.versions.current(read.scope()).orElse(null);
		}
		catch (DataAccessException ex) {
			this.logger.debug("No version of " + read.scope(), ex);
			return null;
		}
	}

	/** Who asks for too much is told so where everyone is. */
	private void sendOrRefuse(KeptAnswer answer, HttpServletRequest request, HttpServletResponse response,
			FilterChain chain) throws ServletException, IOException {
		if (this.allowance.ask(request).isPresent()) {
			chain.doFilter(request, response);
		}
		else {
			answer.send(request, response);
		}
	}

	/**
	 * Waits for the answer where somebody else is asking the same at the same version:
	 * what they are told is no older than that.
	 */
	private void askOnce(Question question, HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		CompletableFuture<Optional<KeptAnswer>> own = new CompletableFuture<>();
		CompletableFuture<Optional<KeptAnswer>> others = this.asked.putIfAbsent(question, own);
		if (others != null) {
			KeptAnswer answer = await(others);
			if (answer != null) {
				sendOrRefuse(answer, request, response, chain);
			}
			else {
				chain.doFilter(request, response);
			}
			return;
		}
		Optional<KeptAnswer> answer = Optional.empty();
		try {
			answer = ask(question, request, response, chain);
		}
		finally {
			this.asked.remove(question, own);
			own.complete(answer);
		}
	}

	private static @Nullable KeptAnswer await(CompletableFuture<Optional<KeptAnswer>> others) {
		try {
			return others.get(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS).orElse(null);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return null;
		}
		catch (ExecutionException | TimeoutException ex) {
			return null;
		}
	}

	private Optional<KeptAnswer> ask(Question question, HttpServletRequest request, HttpServletResponse response,
			FilterChain chain) throws ServletException, IOException {
		List<String> before = List.copyOf(response.getHeaderNames());
		ContentCachingResponseWrapper made = new ContentCachingResponseWrapper(response);
		chain.doFilter(new Unconditional(request), made);
		KeptAnswer answer = KeptAnswer.of(question.version(), request, made, before);
		if (answer == null) {
			made.copyBodyToResponse();
			return Optional.empty();
		}
		this.kept.put(question.key(), answer);
		if (answer.isHeld(request.getHeader("If-None-Match"))) {
			response.setStatus(HttpServletResponse.SC_NOT_MODIFIED);
		}
		else {
			made.copyBodyToResponse();
		}
		return Optional.of(answer);
	}

	/**
	 * What is being asked for at a version of the register.
	 */
	private record Question(String key, String version) {
	}

}
