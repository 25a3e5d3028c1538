package witnessmark.gearbox;

import java.util.Collections;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Full-load engine torque over speed, straight between the points.
 *
 * @param points newton metres by revolutions per minute, at least one
 */
public record TorqueCurve(NavigableMap<Double, Double> points, Basis basis, String note) {

    public TorqueCurve {
        points = Collections.unmodifiableNavigableMap(new TreeMap<>(points));
    }

    /** The usual shape of a heavy diesel, where only the peak is known. */
    static TorqueCurve shapedAround(double peakNm, double idleRpm, double lowestPullingRpm, double governedRpm) {
        double flatEnd = lowestPullingRpm + 0.4 * (governedRpm - lowestPullingRpm);
        var points = new TreeMap<Double, Double>();
        points.put(idleRpm, 0.6 * peakNm);
        points.put(lowestPullingRpm, peakNm);
        points.put(flatEnd, peakNm);
        points.put(governedRpm, 0.75 * peakNm);
        return new TorqueCurve(
                points,
                Basis.ASSUMED,
                "shape assumed: 0.6 of the peak at idle, the peak from the lowest pulling speed over 0.4 of the band,"
                        + " 0.75 at governed speed; judgement");
    }

    /** Torque at a speed; below the first point it falls with speed, above the last it keeps the last value. */
    public double atRpm(double rpm) {
        Map.Entry<Double, Double> below = points.floorEntry(rpm);
        Map.Entry<Double, Double> above = points.ceilingEntry(rpm);
        if (below == null) {
            return points.firstEntry().getValue() * Math.max(0, rpm) / points.firstKey();
        }
        if (above == null || above.getKey().equals(below.getKey())) {
            return below.getValue();
        }
        double share = (rpm - below.getKey()) / (above.getKey() - below.getKey());
        return below.getValue() + share * (above.getValue() - below.getValue());
    }

    public double peakNm() {
        return Collections.max(points.values());
    }

    /** The lowest speed that gives at least so much torque; empty where no speed does. */
    public OptionalDouble lowestRpmGiving(double newtonMetres) {
        double rpmBefore = 0;
        double torqueBefore = 0;
        for (Map.Entry<Double, Double> point : points.entrySet()) {
            if (point.getValue() >= newtonMetres) {
                double share = (newtonMetres - torqueBefore) / (point.getValue() - torqueBefore);
                return OptionalDouble.of(rpmBefore + Math.max(0, share) * (point.getKey() - rpmBefore));
            }
            rpmBefore = point.getKey();
            torqueBefore = point.getValue();
        }
        return OptionalDouble.empty();
    }
}
