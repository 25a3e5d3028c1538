package witnessmark.gearbox.start;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;

/** A solid round shaft in torsion (strength of materials textbooks). */
public record ShaftTorsion(double torqueNm, double diameterMm) {

    /** Shear yield over tensile yield of a ductile steel, 1/sqrt(3) rounded up as in textbooks. */
    public static final double SHEAR_YIELD_SHARE = 0.58;

    /** Shear stress at the surface. */
    public Figure shearStress() {
        double metres = diameterMm / 1000;
        return Figure.computed(
                16 * Math.abs(torqueNm) / (Math.PI * metres * metres * metres) / 1e6,
                Unit.MEGAPASCAL,
                "16000 T / (pi d^3)");
    }

    /** Shear stress at which a steel of that tensile yield begins to twist for good. */
    public static Figure shearYield(double tensileYieldMpa) {
        return Figure.computed(SHEAR_YIELD_SHARE * tensileYieldMpa, Unit.MEGAPASCAL, "0.58 tensile_yield");
    }
}
