package witnessmark.triplog.event;

import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/** The pedal at the floor while rolling, and the foot on the pedal: in gear, slipping, or holding on a hill. */
final class ClutchEvents implements Detector {
    private static final double RIDING_KMH = 5;
    /** At idle a gear that fits does so by chance, while road speed falls past it. */
    private static final double IDLING = 1.15;

    private static final double FLOOR_PERCENT = 95;
    private static final double FLOOR_KMH = 3;
    private static final double FLOOR_SECONDS = 0.15;
    /** Between rows farther apart the pedal may have come up unseen. */
    private static final double FLOOR_APART_SECONDS = 1.25;

    private static final double HOLDING_KMH = 1.2;
    private static final double HOLDING_TO_IDLE = 1.05;
    private static final double HOLDING_TO_GOVERNED = 0.75;
    private static final double HOLDING_PERCENT = 7;
    private static final double HOLDING_TORQUE = 18;
    /** The last seconds before the wheels turn are the start's own, with a heavy truck. */
    private static final double TAKE_UP_SECONDS = 3;

    /** Where no brake signal tells that the truck is not held by its brakes. */
    private static final double UNKNOWN_BRAKE_SECONDS = 6;

    private final Drive drive;
    private final StartEvents starts;
    private final OnePress press;
    private final LastingCondition riding;
    private final LastingCondition holding;
    private final LastingCondition floored;
    private boolean brakeKnown;
    /** Whether the truck moved off from where it was held. */
    private boolean movedOff;

    ClutchEvents(Drive drive, StartEvents starts, LastGears gears) {
        this.drive = drive;
        this.starts = starts;
        this.press = new OnePress(drive, gears);
        double least = drive.limits().ridingSeconds();
        this.riding = new LastingCondition(least, 0.5, this::rode);
        this.holding = new LastingCondition(least, 0.3, this::held);
        this.floored = new LastingCondition(FLOOR_SECONDS, 0.15, this::floored);
    }

    @Override
    public void row(Moment m) {
        if (press.isEndedBy(m)) {
            riding.end();
            holding.end();
        }
        press.row(m);
        boolean pressed = press.isOn() && !Double.isNaN(m.rpm());
        boolean awake = m.rpm() > IDLING * drive.table().idleRpm();
        boolean slips = pressed && press.isAhead(m);
        boolean rides = pressed && awake && m.kmh() > RIDING_KMH && !starts.isStarting() && (m.isInGear() || slips);
        if (rides && riding.isOpen() && !slips && riding.gear != m.inHand()) {
            // One gear drives on; another one means that the ratio only sweeps past.
            riding.end();
        }
        look(riding, m, rides);
        boolean held = pressed && holds(m);
        movedOff = !held && (movedOff || holding.isOpen() && m.kmh() >= HOLDING_KMH);
        look(holding, m, held);
        look(
                floored,
                m,
                m.kmh() > FLOOR_KMH
                        && m.seconds() <= FLOOR_APART_SECONDS
                        && (m.get(Signal.CLUTCH_FLOOR) > 0.5 || m.get(Signal.CLUTCH_PEDAL) >= FLOOR_PERCENT));
    }

    private static void look(LastingCondition spell, Moment m, boolean holds) {
        if (holds || spell.isOpen()) {
            spell.look(m, holds, 0);
        }
    }

    /** Whether a standing truck is held by a clutch that half takes hold, and by no brake. */
    private boolean holds(Moment m) {
        double brake = m.get(Signal.BRAKE);
        brakeKnown = !Double.isNaN(brake);
        return m.kmh() < HOLDING_KMH
                && pulls(m)
                && m.rpm() > HOLDING_TO_IDLE * drive.table().idleRpm()
                && m.rpm() < HOLDING_TO_GOVERNED * drive.table().governedRpm()
                && !(brake > 0.5)
                && !(m.get(Signal.PARKING_BRAKE) > 0.5)
                && !(m.get(Signal.CLUTCH_PEDAL) >= FLOOR_PERCENT)
                && m.leverPosition() != 0;
    }

    /** By the accelerator; by torque only beyond what the engine takes to turn itself. */
    private static boolean pulls(Moment m) {
        double accelerator = m.get(Signal.ACCELERATOR);
        return Double.isNaN(accelerator) ? m.get(Signal.ENGINE_TORQUE) > HOLDING_TORQUE : accelerator > HOLDING_PERCENT;
    }

    @Override
    public boolean isOpen() {
        return press.isOn() || riding.isOpen() || holding.isOpen() || floored.isOpen();
    }

    @Override
    public void interrupted() {
        riding.end();
        holding.end();
        floored.end();
        press.interrupted();
    }

    private void rode(LastingCondition spell) {
        String gear = press.gear().orElseGet(() -> InHand.word(drive.table(), spell.gear));
        press.keep(HabitEvent.of(
                EventKind.RIDING_CLUTCH,
                spell.stretch(),
                HabitEvent.Gears.in(gear),
                spell.seconds() / 20,
                0.9,
                EventFigures.NONE,
                Drive.words(
                        "Pedal pressed for %.1f s while the gear still drove: foot on the clutch, free travel gone, or the"
                                + " switch set wrong.",
                        spell.seconds())));
    }

    private void held(LastingCondition spell) {
        double takeUp = movedOff ? TAKE_UP_SECONDS : 0;
        double least = brakeKnown ? drive.limits().ridingSeconds() : UNKNOWN_BRAKE_SECONDS;
        if (spell.seconds() < least + takeUp) {
            return;
        }
        press.keep(HabitEvent.of(
                EventKind.RIDING_CLUTCH,
                spell.stretch(),
                HabitEvent.Gears.NONE,
                spell.seconds() / 10,
                brakeKnown ? 0.85 : 0.65,
                EventFigures.NONE,
                Drive.words(
                        "Pedal pressed and accelerator on for %.1f s at a stand%s: held by a clutch that slips, or the"
                                + " engine raised with the pedal down.",
                        spell.seconds(), brakeKnown ? ", brakes off" : " (the log has no brake signal)")));
    }

    private void floored(LastingCondition spell) {
        drive.found(
                EventKind.CLUTCH_FLOORED_ROLLING,
                spell,
                HabitEvent.Gears.NONE,
                spell.highestKmh / 30,
                0.9,
                EventFigures.NONE,
                Drive.words(
                        "Pedal at the floor for %.1f s at up to %.0f km/h: the clutch brake bites there.",
                        spell.seconds(), spell.highestKmh));
    }
}
