package county.bigtree.registry.readcache;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class FollowedTest {

	private final Followed followed = new Followed();

	@Test
	void isBelievedForLessThanASecond() {
		long begun = System.nanoTime();
		this.followed.learn("7", begun, this.followed.epoch());
		assertThat(this.followed.believed(begun + 799_000_000)).isEqualTo("7");
		assertThat(this.followed.believed(begun + 800_000_000)).isNull();
	}

	@Test
	void learnsNothingThatBeganToBeReadBeforeACommitOfThisNode() {
		long epoch = this.followed.epoch();
		long begun = System.nanoTime();
		this.followed.forget();
		this.followed.learn("7", begun, epoch);
		assertThat(this.followed.believed(begun)).isNull();
		this.followed.learn("8", begun, this.followed.epoch());
		assertThat(this.followed.believed(begun)).isEqualTo("8");
	}

	@Test
	void keepsWhatWasReadLast() {
		long begun = System.nanoTime();
		this.followed.learn("8", begun, this.followed.epoch());
		this.followed.learn("7", begun - 1, this.followed.epoch());
		assertThat(this.followed.believed(begun)).isEqualTo("8");
	}

}
