package witnessmark.triplog.event;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/** Long rolls out of gear at idle, and wheels turning with the engine stopped. */
final class RollingEvents implements Detector {
    private static final double STOPPED_SECONDS = 5;
    private static final double STOPPED_KM = 0.02;
    private static final double COAST_KM = 0.04;
    private static final double IDLING = 1.3;
    private static final double PATIENCE_SECONDS = 1.2;
    /** Where nothing tells a pedal held down from a lever in neutral: nobody holds it so long, but to slow down. */
    private static final double UNKNOWN_SECONDS = 10;

    /** An engine that pulls so much, or an input shaft so far ahead of it with the pedal up, belies an engine speed that is low. */
    private static final double PULLING_PERCENT = 30;

    private static final double AHEAD_RPM = 250;
    private static final double HELD_SECONDS = 20;
    private static final double BRAKED_KMH_PER_SECOND = 1.3;
    /** Declared assumption for the sliding distance where the drawing is not at hand: radius of a gear's hub bore. */
    private static final double HUB_RADIUS_M = 0.04;

    /** Of a gear's ratio. */
    private static final double FITS = 0.04;

    private final Drive drive;
    private final LastGears gears;
    private final LastingCondition coast;
    private final LastingCondition stopped;
    private boolean pedalKnown;
    private boolean leverOut;
    private long rowsOut;
    private long rowsInNeutral;
    /** By gear, the rows of the roll in which its ratio fits. */
    private final long[] fitting;

    private boolean parked;
    private boolean byShaft;

    RollingEvents(Drive drive, LastGears gears) {
        this.drive = drive;
        this.gears = gears;
        this.fitting = new long[drive.table().gears().size()];
        this.coast = new LastingCondition(drive.limits().coastSeconds(), PATIENCE_SECONDS, this::coasted);
        this.stopped = new LastingCondition(STOPPED_SECONDS, 3, this::rolledStopped);
    }

    @Override
    public void row(Moment m) {
        boolean out = m.inHand() == InHand.NEUTRAL || m.inHand() == InHand.PEDAL_DOWN;
        boolean belied = isBelied(m);
        boolean neutral = out && !belied && m.kmh() >= drive.limits().coastKmh() && isOutOfGear(m);
        if (neutral && !coast.isOpen()) {
            rowsOut = 0;
            rowsInNeutral = 0;
            Arrays.fill(fitting, 0);
        }
        if (neutral) {
            rowsOut++;
            rowsInNeutral += m.leverPosition() == 0 ? 1 : 0;
            leverOut = 2 * rowsInNeutral > rowsOut;
            countFitting(m);
        }
        if (neutral || coast.isOpen()) {
            pedalKnown = m.isPedalKnown();
            coast.look(m, neutral, neutral ? slidingRpm(m) : 0);
        }
        boolean off = m.inHand() == InHand.ENGINE_OFF && !belied;
        if (off || stopped.isOpen()) {
            parked = m.get(Signal.PARKING_BRAKE) > 0.5;
            byShaft = m.get(Signal.OUTPUT_SHAFT_SPEED) > 0;
            stopped.look(m, off, off ? m.outputRpm(drive.perKmh()) * rangeRatio() : 0);
        }
    }

    private void countFitting(Moment m) {
        double ratio = m.rpm() / m.outputRpm(drive.perKmh());
        for (int g = 0; g < fitting.length; g++) {
            fitting[g] += Math.abs(ratio / drive.table().gear(g).ratio() - 1) < FITS ? 1 : 0;
        }
    }

    /**
     * Seconds of the roll in which nothing but a gear that is out explains the engine. Where one gear fits it may as well have
     * been in, the road turning the engine near idle; an engine left at idle stays while the road speed goes by.
     */
    private double secondsSurelyOut(LastingCondition spell) {
        double fits = (double) Arrays.stream(fitting).max().orElse(0) / Math.max(1, rowsOut);
        return leverOut ? spell.seconds() : (1 - fits) * spell.seconds();
    }

    /** Whether other signals say that the engine turns faster than the log has it, as when that stood still. */
    private static boolean isBelied(Moment m) {
        boolean ahead = !m.isPedalPressed() && m.get(Signal.INPUT_SHAFT_SPEED) - m.rpm() > AHEAD_RPM;
        return ahead || m.load() > PULLING_PERCENT;
    }

    /**
     * By the lever, or by an engine left at idle with the pedal up: that turns no wheels, whatever a switch at the lever
     * says that has stuck. Where the pedal is not known, it may be down with the gear in.
     */
    private boolean isOutOfGear(Moment m) {
        double position = m.leverPosition();
        if (position == 0) {
            return m.rpm() < IDLING * drive.table().idleRpm();
        }
        return m.inHand() == InHand.NEUTRAL && (Double.isNaN(position) || m.isPedalKnown());
    }

    @Override
    public boolean isOpen() {
        return coast.isOpen() || stopped.isOpen();
    }

    @Override
    public void interrupted() {
        coast.end();
        stopped.end();
    }

    /** How many times faster than the output the mainshaft turns in the range last seen. */
    private double rangeRatio() {
        GearRun last = gears.current;
        return last != null && drive.table().gear(last.gear).range() == KnobGear.Range.LOW
                ? drive.table().rangeStep()
                : 1;
    }

    /** Speed between mainshaft and the lowest forward gear of the front box, which idles along at engine / ratio. */
    private double slidingRpm(Moment m) {
        double mainshaft = m.outputRpm(drive.perKmh()) * rangeRatio();
        return Math.abs(mainshaft - m.rpm() / lowestMainRatio());
    }

    private double lowestMainRatio() {
        return drive.table().gears().stream()
                .filter(g -> !g.isReverse() && g.lever() != 0)
                .map(drive.table()::mainRatio)
                .max(Comparator.naturalOrder())
                .orElse(1.0);
    }

    private void coasted(LastingCondition spell) {
        double out = secondsSurelyOut(spell);
        if (spell.km < COAST_KM
                || out < drive.limits().coastSeconds()
                || !pedalKnown && !leverOut && mayBeHeld(spell, out)) {
            return;
        }
        double metres = 2 * Math.PI * HUB_RADIUS_M * spell.integral / 60;
        @Nullable GearRun last = gears.current;
        Optional<String> gear = last == null
                ? Optional.empty()
                : Optional.of(drive.table().gear(last.gear).name());
        drive.found(
                EventKind.COAST_IN_NEUTRAL,
                spell,
                new HabitEvent.Gears(gear, gear),
                spell.seconds() / 60,
                pedalKnown || leverOut ? 0.95 : 0.75,
                EventFigures.of(EventFigure.DISTANCE_KM, spell.km)
                        .and(EventFigure.SLIDING_TURNS, spell.integral / 60)
                        .and(EventFigure.SLIDING_M, metres),
                Drive.words(
                        "Rolled %.2f km in %.0f s at up to %.0f km/h, engine at idle, no gear fits%s. The lowest forward"
                                + " gear slid about %.0f m on its seat (radius 40 mm assumed).",
                        spell.km,
                        spell.seconds(),
                        spell.highestKmh,
                        leverOut
                                ? ", lever in neutral"
                                : pedalKnown
                                        ? ", pedal up"
                                        : " (out of gear, or pedal down: the log has no clutch to be believed)",
                        metres));
    }

    private static boolean mayBeHeld(LastingCondition spell, double out) {
        double slowing = (spell.startKmh - spell.endKmh) / out;
        return out < UNKNOWN_SECONDS || out < HELD_SECONDS && slowing > BRAKED_KMH_PER_SECOND;
    }

    private void rolledStopped(LastingCondition spell) {
        if (spell.km < STOPPED_KM) {
            return;
        }
        drive.found(
                EventKind.ROLLING_ENGINE_STOPPED,
                spell,
                HabitEvent.Gears.NONE,
                spell.km,
                parked ? 0.5 : byShaft ? 0.9 : 0.6,
                EventFigures.of(EventFigure.DISTANCE_KM, spell.km)
                        .and(EventFigure.MAINSHAFT_TURNS, spell.integral / 60)
                        .and(EventFigure.BY_OUTPUT_SHAFT, byShaft ? 1 : 0),
                Drive.words(
                        "Wheels turned for %.2f km in %.0f s at up to %.0f km/h with the engine stopped%s",
                        spell.km,
                        spell.seconds(),
                        spell.highestKmh,
                        byShaft
                                ? ": towed or rolled, the front box without oil."
                                : ". By road speed: a truck on a trailer, or towed with its axle shafts out, looks the"
                                        + " same."));
    }
}
