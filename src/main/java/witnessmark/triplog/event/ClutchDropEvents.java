package witnessmark.triplog.event;

import witnessmark.triplog.gear.InHand;

/**
 * The clutch let in at one blow at a start: the engine, held well above idle, is pulled down within a fraction of a
 * second as the wheels begin to turn. A clutch that grabs looks the same; the log does not tell them apart.
 */
final class ClutchDropEvents implements Detector {
    /** Common practice, no source: a start that slips as it should takes a second and more for as much. */
    private static final double LEAST_FALL_RPM = 400;

    private static final double LEAST_FALL_SHARE = 0.25;
    private static final double LONGEST_SECONDS = 0.6;
    private static final double ABOVE_IDLE_RPM = 450;
    /** Rows farther apart miss the height from which the engine fell, and show less of the fall. */
    private static final double APART_SECONDS = 0.12;

    /** Below this share of idle the engine has stalled, or the value is none. */
    private static final double STALLING = 0.5;

    /** A truck that rolls at this share of the gear's speed before the fall was shifted, with the engine let fall. */
    private static final double ROLLED = 0.6;

    private static final double SHOWN = 0.67;
    private static final double LONGEST_SHOWN_SECONDS = 0.45;
    private static final double START_KMH = 8;
    private static final double STOOD_SECONDS = 3;
    private static final double TO_GEAR_SECONDS = 2.5;
    /** Declared assumption where the engine's data are not at hand: inertia of engine and flywheel. */
    private static final double ENGINE_INERTIA = 3.5;

    private static final double SERIOUS_NM = 1000;
    private static final int KEPT = 32;

    private final Drive drive;
    private final long[] times = new long[KEPT];
    private final double[] rpm = new double[KEPT];
    private final double[] road = new double[KEPT];
    private final long[] lines = new long[KEPT];
    private int count;
    private boolean revved;
    private long lastStanding = Long.MIN_VALUE / 2;
    private Fall fall = Fall.NONE;

    /** A fall of engine speed, and the road speed before and after it. */
    private record Fall(
            long fromMicros,
            long toMicros,
            long firstLine,
            long lastLine,
            double fromRpm,
            double toRpm,
            double fromKmh,
            double kmh) {
        static final Fall NONE = new Fall(Long.MIN_VALUE / 2, Long.MIN_VALUE / 2, 0, 0, 0, 0, 0, 0);

        double rpm() {
            return fromRpm - toRpm;
        }

        double rpmPerSecond() {
            return rpm() / ((toMicros - fromMicros) / 1e6);
        }

        /** What the engine's own inertia gave the clutch. */
        double inertiaTorqueNm() {
            return ENGINE_INERTIA * rpmPerSecond() * Math.PI / 30;
        }
    }

    ClutchDropEvents(Drive drive) {
        this.drive = drive;
    }

    @Override
    public void row(Moment m) {
        if (m.inHand() == InHand.STANDING) {
            lastStanding = m.micros();
        }
        if (Double.isNaN(m.rpm())) {
            return;
        }
        if (m.isPedalKnown() && !m.isPedalPressed() && m.kmh() < START_KMH && since(m, lastStanding) < STOOD_SECONDS) {
            look(m);
        }
        revved = m.rpm() >= drive.table().idleRpm() + shown(m) * ABOVE_IDLE_RPM;
        int at = count++ % KEPT;
        times[at] = m.micros();
        rpm[at] = m.rpm();
        road[at] = m.kmh();
        lines[at] = m.line();
    }

    private static double since(Moment m, long micros) {
        return (m.micros() - micros) / 1e6;
    }

    /** Whether the engine turns so fast that its fall would tell something. */
    boolean isRevved() {
        return revved;
    }

    /** How much of the height and of the fall the rows can be trusted to show. */
    private static double shown(Moment m) {
        return m.seconds() > APART_SECONDS ? SHOWN : 1;
    }

    private void look(Moment m) {
        double shown = shown(m);
        double longest = shown < 1 ? LONGEST_SHOWN_SECONDS : LONGEST_SECONDS;
        for (int back = 1; back <= Math.min(count, KEPT); back++) {
            int at = (count - back) % KEPT;
            if (since(m, times[at]) > longest) {
                return;
            }
            Fall one = new Fall(times[at], m.micros(), lines[at], m.line(), rpm[at], m.rpm(), road[at], m.kmh());
            boolean far = one.rpm() >= shown * LEAST_FALL_RPM
                    && (one.rpm() >= LEAST_FALL_SHARE * one.fromRpm() || one.inertiaTorqueNm() >= SERIOUS_NM)
                    && one.fromRpm() >= drive.table().idleRpm() + shown * ABOVE_IDLE_RPM
                    && one.toRpm() >= STALLING * drive.table().idleRpm();
            if (far && (since(m, fall.toMicros()) > STOOD_SECONDS || one.rpm() > fall.rpm())) {
                fall = one;
            }
        }
    }

    /** The first gear after a standstill is what the clutch took hold of. */
    void settled(GearRun run) {
        double before = (run.startMicros - fall.toMicros()) / 1e6;
        if (before > TO_GEAR_SECONDS || before < -LONGEST_SECONDS) {
            return;
        }
        double rolled = drive.table().gear(run.gear).ratio() * fall.fromKmh() * drive.perKmh();
        if (rolled > ROLLED * fall.toRpm()) {
            return;
        }
        String gear = drive.table().gear(run.gear).name();
        double torque = fall.inertiaTorqueNm();
        drive.found()
                .accept(HabitEvent.of(
                        EventKind.CLUTCH_DROPPED,
                        new HabitEvent.Stretch(
                                fall.fromMicros(),
                                (fall.toMicros() - fall.fromMicros()) / 1e6,
                                fall.firstLine(),
                                fall.lastLine(),
                                fall.kmh(),
                                fall.fromRpm()),
                        HabitEvent.Gears.into(gear),
                        torque / SERIOUS_NM,
                        0.85,
                        EventFigures.of(EventFigure.FALL_RPM, fall.rpm())
                                .and(EventFigure.FALL_RPM_PER_SECOND, fall.rpmPerSecond())
                                .and(EventFigure.INERTIA_TORQUE_NM, torque),
                        Drive.words(
                                "Clutch took hold at one blow at a start in %s: engine from %.0f to %.0f rpm within %.1f s,"
                                        + " about %.0f Nm from its own inertia (3.5 kg m2 assumed). A clutch that grabs"
                                        + " looks the same.",
                                gear,
                                fall.fromRpm(),
                                fall.toRpm(),
                                (fall.toMicros() - fall.fromMicros()) / 1e6,
                                torque)));
        fall = Fall.NONE;
    }

    @Override
    public void interrupted() {
        count = 0;
        revved = false;
        lastStanding = Long.MIN_VALUE / 2;
        fall = Fall.NONE;
    }
}
