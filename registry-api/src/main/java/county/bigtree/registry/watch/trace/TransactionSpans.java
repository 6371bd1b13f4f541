package county.bigtree.registry.watch.trace;

import io.micrometer.tracing.Span;
import io.micrometer.tracing.Tracer;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * A span for each transaction of a request or a job, from its begin to its end, named
 * after the use case that it is for.
 */
class TransactionSpans implements TransactionExecutionListener {

	private final ObjectProvider<Tracer> tracer;

	TransactionSpans(ObjectProvider<Tracer> tracer) {
		this.tracer = tracer;
	}

	@Override
	public void afterBegin(TransactionExecution transaction, @Nullable Throwable failure) {
		Tracer traces = this.tracer.getObject();
		if (failure != null || traces.currentSpan() == null
				|| !TransactionSynchronizationManager.isSynchronizationActive()) {
			return;
		}
		Span span = traces.nextSpan()
			.name(name(transaction.getTransactionName()))
			.tag("readonly", transaction.isReadOnly())
			.start();
		TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {

			@Override
			public void afterCompletion(int status) {
				span.tag("outcome", (status == STATUS_COMMITTED) ? "COMMITTED" : "ROLLED_BACK").end();
			}

		});
	}

	/** Class and method alone of a transaction's name, which is a method's. */
	private static String name(String method) {
		int dot = method.lastIndexOf('.', method.lastIndexOf('.') - 1);
		return ("transaction " + method.substring(dot + 1)).strip();
	}

}
