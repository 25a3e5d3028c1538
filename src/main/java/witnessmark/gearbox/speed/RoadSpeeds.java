package witnessmark.gearbox.speed;

import java.util.List;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/** Road speed and engine speed in each gear. Kinematics: v = n 60 / (gear ratio, axle ratio, turns per km). */
public record RoadSpeeds(TruckProfile truck) {

    private static final String SPEED = "v = 60 n / (i_gear i_axle N_km)";

    /** Road speeds of one gear, in the order of the engine speeds asked for. */
    public record Row(Gear gear, List<Figure> atEngineSpeeds) {}

    /**
     * The highest road speed at which a gear may be taken: governed speed in that gear.
     *
     * @param roadSpeed km/h
     */
    public record Ceiling(Gear gear, Figure roadSpeed) {

        /** In both units, each rounded down: 23 km/h (14 mph). */
        public String limit() {
            return SpeedUnits.BOTH.limit(roadSpeed);
        }

        /** The same with its gear before it, as one line for the bench. */
        public String line() {
            return line(SpeedUnits.BOTH);
        }

        /** The same in the units read. */
        public String line(SpeedUnits units) {
            return gear.id() + ": " + units.limit(roadSpeed);
        }
    }

    /**
     * Where the top gear cruises.
     *
     * @param from road speed at the lowest pulling speed
     * @param ease road speed at 0.85 of governed speed, up to which to cruise (common practice, judgement)
     * @param most road speed at governed speed
     */
    public record CruisingBand(Gear gear, Figure from, Figure ease, Figure most) {}

    public Figure roadSpeed(Gear gear, double engineRpm) {
        return Figure.computed(truck.roadKmh(engineRpm / gear.ratio()), Unit.KILOMETRE_PER_HOUR, SPEED);
    }

    public Figure engineSpeed(Gear gear, double kmh) {
        return Figure.computed(truck.outputRpm(kmh) * gear.ratio(), Unit.RPM, "n = v i_gear i_axle N_km / 60");
    }

    /** Every gear at the engine speeds asked for, slowest first, reverse last. */
    public List<Row> table(List<Double> engineRpms) {
        return truck.gears().all().stream()
                .map(gear -> new Row(
                        gear,
                        engineRpms.stream().map(rpm -> roadSpeed(gear, rpm)).toList()))
                .toList();
    }

    /** The ceiling of every low-range gear, forward then reverse; empty for a box without a range. */
    public List<Ceiling> lowRangeCeilings() {
        return truck.gears().all().stream()
                .filter(gear -> gear.range() == Range.LOW)
                .map(this::ceiling)
                .toList();
    }

    public Ceiling ceiling(Gear gear) {
        return new Ceiling(gear, roadSpeed(gear, truck.value(Parameter.GOVERNED_RPM)));
    }

    public CruisingBand cruisingBand() {
        Gear top = truck.gears().top();
        double governed = truck.value(Parameter.GOVERNED_RPM);
        return new CruisingBand(
                top,
                roadSpeed(top, truck.value(Parameter.LOWEST_PULLING_RPM)),
                roadSpeed(top, 0.85 * governed),
                roadSpeed(top, governed));
    }
}
