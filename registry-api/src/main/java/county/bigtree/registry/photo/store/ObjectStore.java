package county.bigtree.registry.photo.store;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

import org.jspecify.annotations.Nullable;
import software.amazon.awssdk.auth.credentials.AwsBasicCredentials;
import software.amazon.awssdk.auth.credentials.StaticCredentialsProvider;
import software.amazon.awssdk.awscore.exception.AwsErrorDetails;
import software.amazon.awssdk.core.checksums.RequestChecksumCalculation;
import software.amazon.awssdk.core.checksums.ResponseChecksumValidation;
import software.amazon.awssdk.core.exception.SdkException;
import software.amazon.awssdk.core.sync.RequestBody;
import software.amazon.awssdk.http.urlconnection.UrlConnectionHttpClient;
import software.amazon.awssdk.profiles.ProfileFile;
import software.amazon.awssdk.regions.Region;
import software.amazon.awssdk.retries.StandardRetryStrategy;
import software.amazon.awssdk.services.s3.S3Client;
import software.amazon.awssdk.services.s3.S3ClientBuilder;
import software.amazon.awssdk.services.s3.S3Configuration;
import software.amazon.awssdk.services.s3.model.NoSuchKeyException;
import software.amazon.awssdk.services.s3.model.S3Exception;

/**
 * One bucket. Whoever asks waits some seconds at most, and so few ask at once that a
 * store that hangs does not hold up what has nothing to do with photos.
 */
public final class ObjectStore implements AutoCloseable {

	private static final Duration PATIENCE = Duration.ofSeconds(5);

	private static final Duration TO_CONNECT = Duration.ofSeconds(2);

	private static final int TRIES = 2;

	private static final int READING_AT_ONCE = 24;

	private static final int WRITING_AT_ONCE = 4;

	private final S3Client client;

	private final String bucket;

	private final String prefix;

	private final boolean takesNew;

	private final Semaphore reading = new Semaphore(READING_AT_ONCE);

	private final Semaphore writing = new Semaphore(WRITING_AT_ONCE);

	private ObjectStore(S3Client client, String bucket, StoreSettings settings) {
		this.client = client;
		this.bucket = bucket;
		this.prefix = settings.prefix();
		this.takesNew = settings.takesNew();
	}

	static ObjectStore of(StoreSettings settings) {
		String bucket = required(settings.bucket(), "bucket");
		AwsBasicCredentials keys = AwsBasicCredentials.create(required(settings.accessKey(), "access-key"),
				required(settings.secretKey(), "secret-key"));
		ProfileFile noProfile = ProfileFile.aggregator().build();
		S3ClientBuilder builder = S3Client.builder()
			.credentialsProvider(StaticCredentialsProvider.create(keys))
			.region(Region.of(settings.region()))
			.httpClientBuilder(UrlConnectionHttpClient.builder().connectionTimeout(TO_CONNECT).socketTimeout(PATIENCE))
			.serviceConfiguration(
					S3Configuration.builder().pathStyleAccessEnabled(true).chunkedEncodingEnabled(false).build())
			// The register has digests of its own, and not every store knows these.
			.requestChecksumCalculation(RequestChecksumCalculation.WHEN_REQUIRED)
			.responseChecksumValidation(ResponseChecksumValidation.WHEN_REQUIRED)
			.overrideConfiguration((overridden) -> overridden.defaultProfileFile(noProfile)
				.retryStrategy(StandardRetryStrategy.builder().maxAttempts(TRIES).build()));
		if (settings.endpoint() != null) {
			builder.endpointOverride(settings.endpoint());
		}
		return new ObjectStore(builder.build(), bucket, settings);
	}

	private static String required(@Nullable String value, String name) {
		if (value == null || value.isBlank()) {
			throw new IllegalStateException("An object store for photos needs registry.photos.store." + name);
		}
		return value;
	}

	/** Whether the pictures of new photos go here. */
	boolean takesNew() {
		return this.takesNew;
	}

	/**
	 * Puts an object, which is there for good when this returns.
	 * @throws StoreAway if it may not be there
	 */
	void put(String name, byte[] content) {
		asked(this.writing,
				() -> this.client.putObject((put) -> put.bucket(this.bucket)
					.key(this.prefix + name)
					.contentType("image/jpeg")
					.contentLength((long) content.length), RequestBody.fromBytes(content)));
	}

	/**
	 * An object; nothing where there is none of this name.
	 * @throws StoreAway if that can't be told
	 */
	Optional<byte[]> find(String name) {
		return asked(this.reading, () -> {
			try {
				return Optional
					.of(this.client.getObjectAsBytes((get) -> get.bucket(this.bucket).key(this.prefix + name))
						.asByteArrayUnsafe());
			}
			catch (NoSuchKeyException ex) {
				return Optional.empty();
			}
		});
	}

	/**
	 * Deletes an object, if there is one.
	 * @throws StoreAway if it may still be there
	 */
	void delete(String name) {
		asked(this.writing, () -> {
			try {
				this.client.deleteObject((delete) -> delete.bucket(this.bucket).key(this.prefix + name));
			}
			catch (NoSuchKeyException ex) {
				// Some stores say so.
			}
			return name;
		});
	}

	private static <T> T asked(Semaphore room, Supplier<T> question) {
		if (!enter(room)) {
			throw new StoreAway("Too many ask the object store at once");
		}
		try {
			return question.get();
		}
		catch (S3Exception ex) {
			AwsErrorDetails details = ex.awsErrorDetails();
			throw new StoreAway("The object store answered %d, %s".formatted(ex.statusCode(),
					(details != null) ? Objects.toString(details.errorCode()) : "without a code"), ex);
		}
		catch (SdkException ex) {
			throw new StoreAway("The object store can't be reached: " + ex.getMessage(), ex);
		}
		finally {
			room.release();
		}
	}

	private static boolean enter(Semaphore room) {
		try {
			return room.tryAcquire(TO_CONNECT.toMillis(), TimeUnit.MILLISECONDS);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return false;
		}
	}

	@Override
	public void close() {
		this.client.close();
	}

}
