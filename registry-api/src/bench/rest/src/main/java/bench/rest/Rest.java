package bench.rest;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/**
 * Rankings as Spring Data REST exports them from a repository, with nothing written by
 * hand but entities, one query by its name and what is shown of a row.
 */
@SpringBootApplication
public class Rest {

	public static void main(String[] args) {
		SpringApplication.run(Rest.class, args);
	}

}
