package county.bigtree.registry.pages.desk;

/**
 * One entry of a decision's form.
 *
 * @param name as the API calls it, with points between levels
 */
public record Entry(String name, Kind kind) {

	/** How it is typed or chosen. */
	public enum Kind {

		LINE, AREA, FIGURE, DAY, RADIOS, LIST, YES_NO, TICKS, SPECIES

	}

	static Entry line(String name) {
		return new Entry(name, Kind.LINE);
	}

	static Entry area(String name) {
		return new Entry(name, Kind.AREA);
	}

	static Entry figure(String name) {
		return new Entry(name, Kind.FIGURE);
	}

	static Entry day(String name) {
		return new Entry(name, Kind.DAY);
	}

	static Entry radios(String name) {
		return new Entry(name, Kind.RADIOS);
	}

	static Entry list(String name) {
		return new Entry(name, Kind.LIST);
	}

	static Entry yesOrNo(String name) {
		return new Entry(name, Kind.YES_NO);
	}

	static Entry ticks(String name) {
		return new Entry(name, Kind.TICKS);
	}

	static Entry species(String name) {
		return new Entry(name, Kind.SPECIES);
	}

	/** Its id on the page. */
	public String field() {
		return this.name;
	}

}
