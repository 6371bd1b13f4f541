package bench.rest;

import java.util.UUID;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import org.hibernate.annotations.Formula;
import org.hibernate.annotations.Immutable;

@Entity
@Immutable
public class Tree {

	@Id
	private UUID id;

	private String tag;

	@Formula("(select p.title from title_span p where p.tree = id and p.to_at is null)")
	private String title;

	public UUID getId() {
		return this.id;
	}

	public String getTag() {
		return this.tag;
	}

	public String getTitle() {
		return this.title;
	}

}
