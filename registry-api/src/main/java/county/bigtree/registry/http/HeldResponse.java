package county.bigtree.registry.http;

import java.io.ByteArrayOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Locale;

import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpServletResponseWrapper;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;

/**
 * Holds a whole answer, so that it can be looked at instead of being sent. Nothing of it
 * reaches the client.
 */
public class HeldResponse extends HttpServletResponseWrapper {

	private final HttpHeaders headers = new HttpHeaders();

	private final ByteArrayOutputStream body = new ByteArrayOutputStream();

	private int status = SC_OK;

	private @Nullable PrintWriter writer;

	public HeldResponse(HttpServletResponse response) {
		super(response);
	}

	/** What was written so far. */
	public byte[] bytes() {
		flushBuffer();
		return this.body.toByteArray();
	}

	HttpHeaders headers() {
		return this.headers;
	}

	@Override
	public int getStatus() {
		return this.status;
	}

	@Override
	public void setStatus(int status) {
		this.status = status;
	}

	@Override
	public void sendError(int status) {
		this.status = status;
	}

	@Override
	public void sendError(int status, String message) {
		this.status = status;
	}

	@Override
	public void sendRedirect(String location) {
		this.status = SC_FOUND;
		setHeader(HttpHeaders.LOCATION, location);
	}

	@Override
	public void addCookie(Cookie cookie) {
		throw new IllegalStateException("an answer that is not sent sets no cookie");
	}

	@Override
	public boolean containsHeader(String name) {
		return this.headers.containsHeader(name);
	}

	@Override
	public void setHeader(String name, @Nullable String value) {
		if (value == null) {
			this.headers.remove(name);
		}
		else {
			this.headers.set(name, value);
		}
	}

	@Override
	public void addHeader(String name, String value) {
		this.headers.add(name, value);
	}

	@Override
	public void setIntHeader(String name, int value) {
		setHeader(name, Integer.toString(value));
	}

	@Override
	public void addIntHeader(String name, int value) {
		addHeader(name, Integer.toString(value));
	}

	@Override
	public void setDateHeader(String name, long date) {
		this.headers.setDate(name, date);
	}

	@Override
	public void addDateHeader(String name, long date) {
		this.headers.setDate(name, date);
	}

	@Override
	public @Nullable String getHeader(String name) {
		return this.headers.getFirst(name);
	}

	@Override
	public Collection<String> getHeaders(String name) {
		return this.headers.getOrEmpty(name);
	}

	@Override
	public Collection<String> getHeaderNames() {
		return this.headers.headerNames();
	}

	@Override
	public @Nullable String getContentType() {
		return getHeader(HttpHeaders.CONTENT_TYPE);
	}

	@Override
	public void setContentType(@Nullable String type) {
		setHeader(HttpHeaders.CONTENT_TYPE, type);
	}

	@Override
	public String getCharacterEncoding() {
		return StandardCharsets.UTF_8.name();
	}

	@Override
	public void setCharacterEncoding(@Nullable String encoding) {
		// Always UTF-8.
	}

	@Override
	public void setContentLength(int length) {
		setContentLengthLong(length);
	}

	@Override
	public void setContentLengthLong(long length) {
		this.headers.setContentLength(length);
	}

	@Override
	public void setLocale(Locale locale) {
		// Says nothing about what is written.
	}

	@Override
	public ServletOutputStream getOutputStream() {
		return new Kept();
	}

	@Override
	public PrintWriter getWriter() {
		if (this.writer == null) {
			this.writer = new PrintWriter(new OutputStreamWriter(this.body, StandardCharsets.UTF_8));
		}
		return this.writer;
	}

	@Override
	public void flushBuffer() {
		if (this.writer != null) {
			this.writer.flush();
		}
	}

	@Override
	public boolean isCommitted() {
		return false;
	}

	@Override
	public void reset() {
		resetBuffer();
		this.headers.clear();
		this.status = SC_OK;
	}

	@Override
	public void resetBuffer() {
		flushBuffer();
		this.body.reset();
	}

	private final class Kept extends ServletOutputStream {

		@Override
		public void write(int one) {
			HeldResponse.this.body.write(one);
		}

		@Override
		public void write(byte[] bytes, int offset, int length) {
			HeldResponse.this.body.write(bytes, offset, length);
		}

		@Override
		public boolean isReady() {
			return true;
		}

		@Override
		public void setWriteListener(WriteListener listener) {
			throw new IllegalStateException("everything is taken at once");
		}

	}

}
