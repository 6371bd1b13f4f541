package county.bigtree.registry.http.quantity;

import java.util.Map;

import county.bigtree.domain.measuring.BiltmoreGirth;
import county.bigtree.domain.measuring.CrownAxes;
import county.bigtree.domain.measuring.CrownSpokes;
import county.bigtree.domain.measuring.DiameterGirth;
import county.bigtree.domain.measuring.EqualArmHeight;
import county.bigtree.domain.measuring.HalfGirth;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.measuring.StemsGirth;
import county.bigtree.domain.measuring.TaperGirth;
import county.bigtree.domain.measuring.PoleHeight;
import county.bigtree.domain.measuring.ShadowHeight;
import county.bigtree.domain.measuring.SineHeight;
import county.bigtree.domain.measuring.StatedHeight;
import county.bigtree.domain.measuring.StatedSpread;
import county.bigtree.domain.measuring.StickHeight;
import county.bigtree.domain.measuring.StringGirth;
import county.bigtree.domain.measuring.TangentHeight;
import county.bigtree.domain.measuring.TapeGirth;
import county.bigtree.domain.measuring.TwoStationHeight;

/**
 * Which record holds the readings of which method.
 */
final class ReadingMethods {

	private static final Map<Class<?>, Method> METHODS = Map.ofEntries(Map.entry(TapeGirth.class, Method.TAPE),
			Map.entry(HalfGirth.class, Method.HALF_GIRTH), Map.entry(TaperGirth.class, Method.TAPER),
			Map.entry(StemsGirth.class, Method.STEMS), Map.entry(StringGirth.class, Method.STRING),
			Map.entry(DiameterGirth.class, Method.DIAMETER), Map.entry(BiltmoreGirth.class, Method.BILTMORE),
			Map.entry(PoleHeight.class, Method.POLE), Map.entry(ShadowHeight.class, Method.SHADOW),
			Map.entry(StickHeight.class, Method.STICK), Map.entry(EqualArmHeight.class, Method.EQUAL_ARM),
			Map.entry(TangentHeight.class, Method.TANGENT), Map.entry(SineHeight.class, Method.SINE),
			Map.entry(TwoStationHeight.class, Method.TWO_STATION), Map.entry(StatedHeight.class, Method.STATED_HEIGHT),
			Map.entry(CrownAxes.class, Method.AXES), Map.entry(CrownSpokes.class, Method.SPOKES),
			Map.entry(StatedSpread.class, Method.STATED_SPREAD));

	private ReadingMethods() {
	}

	static String code(Class<?> type) {
		Method method = METHODS.get(type);
		if (method == null) {
			throw new IllegalStateException("no method is known for " + type);
		}
		return method.code();
	}

}
