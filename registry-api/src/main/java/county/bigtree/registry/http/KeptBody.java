package county.bigtree.registry.http;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;

import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;

/**
 * A request whose body can be read as often as wanted.
 */
class KeptBody extends HttpServletRequestWrapper {

	private final byte[] body;

	KeptBody(HttpServletRequest request, byte[] body) {
		super(request);
		this.body = body;
	}

	byte[] bytes() {
		return this.body;
	}

	@Override
	public ServletInputStream getInputStream() {
		return new Bytes(this.body);
	}

	@Override
	public BufferedReader getReader() {
		return new BufferedReader(new InputStreamReader(getInputStream(), StandardCharsets.UTF_8));
	}

	private static final class Bytes extends ServletInputStream {

		private final ByteArrayInputStream in;

		Bytes(byte[] body) {
			this.in = new ByteArrayInputStream(body);
		}

		@Override
		public int read() {
			return this.in.read();
		}

		@Override
		public int read(byte[] buffer, int offset, int length) {
			return this.in.read(buffer, offset, length);
		}

		@Override
		public boolean isFinished() {
			return this.in.available() == 0;
		}

		@Override
		public boolean isReady() {
			return true;
		}

		@Override
		public void setReadListener(ReadListener listener) {
			throw new IllegalStateException("the body is at hand and is read at once");
		}

	}

}
