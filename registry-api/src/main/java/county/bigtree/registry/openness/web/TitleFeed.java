package county.bigtree.registry.openness.web;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;

import javax.xml.stream.XMLStreamException;

import county.bigtree.registry.openness.OpenDataSettings;
import county.bigtree.registry.openness.OpenTitle;
import county.bigtree.registry.openness.ReadTitleChanges.Change;
import county.bigtree.registry.openness.XmlText;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * A feed of title changes (Atom, RFC 4287), by pages (RFC 5005, 3). An entry is a change
 * that happened; it stays the same but for what may be shown of its tree.
 */
@Component
class TitleFeed {

	static final String TYPE = "application/atom+xml";

	private final OpenAddresses addresses;

	private final OpenDataSettings settings;

	private final MessageSource messages;

	TitleFeed(OpenAddresses addresses, OpenDataSettings settings, MessageSource messages) {
		this.addresses = addresses;
		this.settings = settings;
		this.messages = messages;
	}

	byte[] write(Asked asked, List<Change> changes) {
		StringWriter text = new StringWriter();
		XmlText.write(text, (xml) -> xml.element("feed", (feed) -> {
			feed.attribute("xmlns", "http://www.w3.org/2005/Atom").attribute("xml:lang", "en");
			head(feed, asked, changes);
			for (Change change : changes) {
				feed.element("entry", (entry) -> entry(entry, change));
			}
		}));
		return text.toString().getBytes(StandardCharsets.UTF_8);
	}

	private void head(XmlText feed, Asked asked, List<Change> changes) throws XMLStreamException {
		String county = asked.county();
		feed.element("id", this.addresses.of(asked.path()));
		feed.element("title", (county != null) ? say("feed.title", county) : say("feed.title.all"));
		feed.element("updated", changes.isEmpty() ? Instant.EPOCH : said(changes.get(0)));
		feed.element("author", (author) -> author.element("name", say("site.name")));
		link(feed, "self", TYPE, asked.address(asked.page()));
		link(feed, "alternate", "text/html", asked.about());
		link(feed, "first", TYPE, asked.path());
		if (asked.page() > 1) {
			link(feed, "previous", TYPE, asked.address(asked.page() - 1));
		}
		if (asked.more()) {
			link(feed, "next", TYPE, asked.address(asked.page() + 1));
		}
		String license = this.settings.license();
		if (license != null) {
			feed.element("link", (link) -> link.attribute("rel", "license").attribute("href", license));
		}
	}

	/** Some readers take more than thousandths of a second for so many thousandths. */
	private static Instant said(Change change) {
		return change.at().truncatedTo(ChronoUnit.SECONDS);
	}

	private void entry(XmlText entry, Change change) throws XMLStreamException {
		OpenTitle title = change.title();
		entry.element("id", "urn:uuid:" + change.id());
		entry.element("title", say(change.began() ? "feed.became" : "feed.ceased", named(title.tag()),
				say("title." + title.title()), title.commonName(), title.countyName()));
		entry.element("updated", said(change));
		entry.element("published", said(change));
		link(entry, "alternate", "text/html", "/counties/" + title.county() + "/species/" + title.species());
		entry.element("category", (category) -> category.attribute("term", title.species()));
		entry.element("summary",
				(summary) -> summary.attribute("type", "text")
					.text(say("feed.summary", say("reason." + change.why()), title.points().toPlainString(),
							title.scientificName())));
	}

	private void link(XmlText within, String rel, String type, String path) throws XMLStreamException {
		within.element("link",
				(link) -> link.attribute("rel", rel)
					.attribute("type", type)
					.attribute("href", this.addresses.of(path)));
	}

	private String named(@Nullable String tag) {
		return (tag != null) ? tag : say("unlisted");
	}

	private String say(String key, Object... arguments) {
		return this.messages.getMessage(key, arguments, Locale.US);
	}

	/**
	 * What is asked for.
	 *
	 * @param path of the feed
	 * @param about the page that it goes with
	 * @param county the name of the county, or null for all
	 * @param page counted from 1
	 * @param more whether another page follows
	 */
	record Asked(String path, String about, @Nullable String county, int page, boolean more) {

		String address(int number) {
			return (number > 1) ? this.path + "?page=" + number : this.path;
		}

	}

}
