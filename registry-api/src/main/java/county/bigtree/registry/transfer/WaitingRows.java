package county.bigtree.registry.transfer;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.species.SpeciesCatalogue;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The rows that wait until it is known what their name means.
 */
@Component
class WaitingRows {

	private static final TypeReference<List<String>> TEXTS = new TypeReference<>() {
	};

	private final JdbcClient jdbc;

	private final SpeciesCatalogue catalogue;

	private final JsonMapper json;

	WaitingRows(JdbcClient jdbc, SpeciesCatalogue catalogue, JsonMapper json) {
		this.jdbc = jdbc;
		this.catalogue = catalogue;
		this.json = json;
	}

	/**
	 * Keeps a row; a job that goes on after a restart may bring it again.
	 */
	void letWait(UUID job, FileRow.Waiting row) {
		this.jdbc.sql("""
				insert into import_waiting (job, row_number, row_key, name, cells) values (?, ?, ?, ?, ?::jsonb)
				on conflict do nothing""")
			.params(job, row.number(), row.key(), row.name(), this.json.writeValueAsString(row.cells()))
			.update();
	}

	/**
	 * Takes the next rows whose name has been matched out of the waiting ones.
	 */
	List<FileRow> release(UUID job, RowReader reader, int most) {
		return this.jdbc
			.sql("""
					delete from import_waiting w using import_name n
					where w.job = n.job and w.name = n.name and (w.job, w.row_number) in (
					  select i.job, i.row_number from import_waiting i join import_name o on o.job = i.job and o.name = i.name
					  where i.job = ? order by i.row_number limit ?)
					returning w.row_number, w.row_key, w.name, w.cells::text as cells, n.species""")
			.params(job, most)
			.query((row, number) -> reader.read(
					new FileRow.Waiting(row.getInt("row_number"), row.getString("row_key"), row.getString("name"),
							this.json.readValue(row.getString("cells"), TEXTS)),
					this.catalogue.get(row.getString("species"))))
			.list();
	}

	/**
	 * Counts rows that waited as what became of them.
	 */
	void count(UUID job, ImportJob.Counts became) {
		this.jdbc
			.sql("""
					update import_job set waiting = waiting - :rows, accepted = accepted + :accepted, kept = kept + :kept, changed = changed + :changed,
					  rejected = rejected + :rejected, already_imported = already_imported + :already where id = :job""")
			.param("rows", became.handled())
			.param("accepted", became.accepted())
			.param("kept", became.kept())
			.param("changed", became.changed())
			.param("rejected", became.rejected())
			.param("already", became.alreadyImported())
			.param("job", job)
			.update();
	}

	/**
	 * Erases all that the job keeps of rows that it has not taken: those that wait are
	 * rejected, and of the rejected ones only the reasons are kept.
	 */
	void erase(UUID job) {
		this.jdbc.sql("""
				with gone as (delete from import_waiting where job = :job returning row_number, name),
				  told as (insert into import_rejection (job, row_number, reason)
				    select :job, row_number, 'the row was erased while it waited for the meaning of its name' from gone
				    on conflict do nothing)
				update import_job set waiting = waiting - n.rows, rejected = rejected + n.rows
				from (select count(*)::int as rows from gone) n where id = :job""").param("job", job).update();
		this.jdbc.sql("delete from import_rejected_cells where job = ?").param(job).update();
	}

	/**
	 * Lets no row of the job wait any longer, and keeps nothing of the rejected ones but
	 * the reasons.
	 */
	void drop(UUID job) {
		this.jdbc.sql("delete from import_rejected_cells where job = ?").param(job).update();
		this.jdbc.sql("delete from import_waiting where job = ?").param(job).update();
		this.jdbc.sql("update import_job set waiting = 0 where id = ?").param(job).update();
	}

}
