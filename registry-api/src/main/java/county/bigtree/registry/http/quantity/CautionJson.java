package county.bigtree.registry.http.quantity;

import java.util.List;

import county.bigtree.domain.measuring.Caution;

/**
 * What lessens a figure's worth.
 */
public record CautionJson(String code, String detail) {

	public static List<CautionJson> of(List<Caution> cautions) {
		return cautions.stream().map((caution) -> new CautionJson(caution.code(), caution.detail())).toList();
	}

}
