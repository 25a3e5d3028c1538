package witnessmark.triplog.road;

import witnessmark.triplog.gear.GearTable;

/**
 * A truck with its load.
 *
 * @param table its gearbox, axle, tyres and engine speeds
 * @param massKg with trailer and load
 * @param peakNm highest engine torque
 * @param tyre true tyre turns per kilometre over those of the table
 */
record RoadTruck(GearTable table, double massKg, double peakNm, double tyre) {
    /** Inertia of engine, flywheel and clutch cover: common practice, no source. */
    static final double ENGINE_INERTIA = 3.2;

    private static final double DRAG_NM = 90;
    private static final double DRAG_PER_RPM = 0.07;

    /** Radians of the output shaft for each metre of road. */
    double outputPerMetre() {
        return table.revsPerKm() * tyre * table.axleRatio() * 2 * Math.PI / 1000;
    }

    double dragNm(double rpm) {
        return rpm < 50 ? 0 : DRAG_NM + DRAG_PER_RPM * rpm;
    }

    /** Torque at the flywheel, friction taken off, with the governor cutting in above governed speed. */
    double engineNm(double rpm, double throttle) {
        double governed = table.governedRpm();
        double shape = rpm < 900 ? 0.55 + 0.45 * rpm / 900 : rpm < 1500 ? 1 : 1 - 0.35 * (rpm - 1500) / 800;
        double governor = rpm <= governed ? 1 : Math.max(0, 1 - (rpm - governed) / 80);
        double lack = table.idleRpm() - rpm;
        double idle = rpm < 250 ? 0 : Math.max(0, Math.min(0.5, 0.12 + 0.006 * lack));
        return Math.max(throttle * shape * governor, idle) * (peakNm + dragNm(rpm)) - dragNm(rpm);
    }

    /** Rolling, air and grade against the truck, in newtons. */
    double resistance(double metresPerSecond, double grade) {
        double rolling = metresPerSecond > 0.02 ? 0.0065 * massKg * 9.81 : 0;
        return rolling + 3.3 * metresPerSecond * metresPerSecond + massKg * 9.81 * grade;
    }
}
