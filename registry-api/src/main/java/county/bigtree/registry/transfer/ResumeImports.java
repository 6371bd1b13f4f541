package county.bigtree.registry.transfer;

import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Takes up unfinished imports when the service starts. A command given in place of
 * serving leaves them alone: another process may be at work on them.
 */
@Component
@ConditionalOnWebApplication
class ResumeImports {

	private final RunImport imports;

	ResumeImports(RunImport imports) {
		this.imports = imports;
	}

	@EventListener(ApplicationReadyEvent.class)
	void goOn() {
		this.imports.goOn();
	}

}
