package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;

import county.bigtree.registry.http.Cursor;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Where the next page of a ranking begins. Keeps the day and the instant of the first
 * page, so that later pages fit it.
 */
@Component
public class StandingCursor {

	/** The list that the cursor belongs to. */
	public static final String LIST = "standing";

	/** Of how many parts it is made. */
	public static final int PARTS = 7;

	private final PageMarks marks;

	StandingCursor(PageMarks marks) {
		this.marks = marks;
	}

	/** What the next page is asked by. */
	public StandingQuestion question(Cursor cursor, int limit) {
		return new StandingQuestion(cursor.day(5), cursor.instant(6), new StandingQuestion.After((int) cursor.number(0),
				(int) cursor.number(1), cursor.decimal(2), this.marks.tree(cursor.number(3)), cursor.decimal(4)),
				limit);
	}

	/** The cursor as it stands in an address; null where no page follows. */
	public @Nullable String next(StandingPage page, StandingQuestion question) {
		if (!page.more()) {
			return null;
		}
		StandingPage.Item last = page.items().get(page.items().size() - 1);
		BigDecimal points = last.scored().score().points().toBigDecimal();
		StandingQuestion.After after = question.after();
		BigDecimal leader = (after != null) ? after.leaderPoints() : points.add(last.behindLeader());
		Instant knownAt = page.asOf().present() ? page.recordedThrough() : page.asOf().knownAt();
		return Cursor
			.of(LIST, last.position(), last.rank(), points, this.marks.of(last.scored()), leader, page.asOf().day(),
					knownAt)
			.text();
	}

}
