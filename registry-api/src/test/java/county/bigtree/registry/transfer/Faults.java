package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;

import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

import static org.hamcrest.Matchers.contains;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What the checks of the whole register say of one county.
 */
@Component
class Faults {

	private final List<RegisterCheck> checks;

	private final TransactionTemplate transaction;

	Faults(List<RegisterCheck> checks, TransactionTemplate transaction) {
		this.checks = checks;
		this.transaction = transaction;
	}

	List<String> in(String county) {
		List<String> faults = new ArrayList<>();
		this.transaction.executeWithoutResult((status) -> this.checks
			.forEach((check) -> check.look(new Findings(Integer.MAX_VALUE, faults::add, (looked) -> {
			}))));
		return faults.stream().filter((fault) -> fault.contains(county)).toList();
	}

}
