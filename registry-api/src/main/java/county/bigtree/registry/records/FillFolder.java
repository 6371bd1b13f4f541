package county.bigtree.registry.records;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

import county.bigtree.registry.http.Paged;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;

/**
 * Fills a folder with what the service answers at the addresses of its sheets. An address
 * that refuses the asker is withheld, with who may see such things. What kinds of thing
 * are refused doesn't depend on whether there are any.
 */
@Service
public class FillFolder {

	private static final int MOST_FILES = 5000;

	private static final int MOST_PAGES = 40;

	private final ListSheets sheets;

	private final RegisterClock clock;

	FillFolder(ListSheets sheets, RegisterClock clock) {
		this.sheets = sheets;
		this.clock = clock;
	}

	/**
	 * Fills the folder.
	 * @param read answers what stands at an address for the asker, or throws its refusal
	 */
	public Folder fill(Subject subject, @Nullable Actor asker, Function<String, Object> read) {
		Map<String, Object> files = new LinkedHashMap<>();
		Set<Folder.Withheld> withheld = new LinkedHashSet<>(this.sheets.unasked(subject, asker));
		ListSheets.Sheets asked = this.sheets.of(subject);
		if (asked.cut()) {
			withheld.add(new Folder.Withheld("further trees",
					"more than %d: ask for them one by one".formatted(ListSheets.MOST_TREES)));
		}
		for (Sheet sheet : asked.all()) {
			if (files.size() >= MOST_FILES) {
				withheld.add(new Folder.Withheld("the rest",
						"more than %d files: ask for the trees one by one".formatted(MOST_FILES)));
				break;
			}
			read(sheet, read, files, withheld, this.sheets.seesAll(subject, asker));
		}
		return new Folder(subject.title(), this.clock.now(), (asker != null) ? asker.creditName() : null, files,
				List.copyOf(withheld));
	}

	/** To who sees all, what is not found is not there. */
	private static void read(Sheet sheet, Function<String, Object> read, Map<String, Object> files,
			Set<Folder.Withheld> withheld, boolean seesAll) {
		try {
			List<Object> pages = pages(sheet, read);
			for (int page = 0; page < pages.size(); page++) {
				files.put((page == 0) ? sheet.file() : sheet.file().replace(".json", "-" + (page + 1) + ".json"),
						pages.get(page));
			}
			if (pages.size() == MOST_PAGES) {
				withheld.add(new Folder.Withheld(sheet.file(), "the rest is read at " + sheet.address()));
			}
		}
		catch (Problem refusal) {
			switch (refusal.type()) {
				case SIGN_IN_NEEDED, NOT_ALLOWED, NOT_FOUND -> {
					if (!seesAll) {
						withheld.add(new Folder.Withheld(sheet.kind(), "for " + sheet.forWhom()));
					}
				}
				default -> throw refusal;
			}
		}
	}

	private static List<Object> pages(Sheet sheet, Function<String, Object> read) {
		List<Object> pages = new ArrayList<>();
		String address = sheet.address();
		while (true) {
			Object page = read.apply(address);
			pages.add(page);
			String next = (page instanceof Paged paged) ? paged.next() : null;
			if (next == null || pages.size() == MOST_PAGES) {
				return pages;
			}
			address = sheet.address() + (sheet.address().contains("?") ? "&" : "?") + "cursor=" + next;
		}
	}

}
