package county.bigtree.registry.nomination;

import java.util.List;
import java.util.UUID;

import org.junit.jupiter.api.Test;

import org.springframework.dao.CannotAcquireLockException;

import static org.mockito.BDDMockito.given;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.verify;

/**
 * The daily look after returned nominations.
 */
class DailyAnswersTest {

	@Test
	void goesOnWithTheNextNominationWhereOneFails() {
		UUID locked = new UUID(0, 1);
		UUID next = new UUID(0, 2);
		AwaitAnswers answers = mock(AwaitAnswers.class);
		given(answers.returned()).willReturn(List.of(locked, next));
		given(answers.await(locked)).willThrow(new CannotAcquireLockException("held by another node"));
		new DailyAnswers(answers).run();
		verify(answers).await(next);
	}

}
