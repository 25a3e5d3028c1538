package witnessmark.triplog.event;

import java.util.Optional;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/**
 * Rolling fast with a low gear in and the pedal down: the road turns the clutch disc above any engine speed. An input shaft
 * speed shows it by itself. Else the gear is taken from the ratio before the press and must be in hand again after it, or
 * the lever must say that it stayed in; where the lever went through neutral it says which gear it took there.
 */
final class DiscEvents implements Detector {
    /** Beyond this multiple of governed speed a disc may burst; the clutch maker's own limit goes before it. */
    private static final double LIMIT = 1.25;

    /** An engine that turns with the disc is driven through a closed clutch: its own overspeed, by a foot that rests. */
    private static final double WITH_THE_ENGINE = 0.9;

    private static final double LEAST_SECONDS = 0.5;
    private static final double IN_HAND_SECONDS = 1.5;
    private static final double AGAIN_SECONDS = 3;
    private static final int AGAIN_ROWS = 3;
    private static final int NONE = -1;

    private final Drive drive;
    private final LastGears gears;
    private final LeverGears levers;
    private boolean pressed;
    private boolean byShaft;
    /** The gear that the lever took while the pedal was down. */
    private Optional<KnobGear> taken = Optional.empty();

    private int gear = NONE;
    private boolean wentToNeutral;
    private boolean leverKnown;
    private double peakRpm;
    private double kmh;
    private double engineRpm;
    private long overFrom;
    private long overTo;
    private long firstLine;
    private long lastLine;
    private long releasedMicros;
    private int rowsAgain;

    DiscEvents(Drive drive, LastGears gears, LeverGears levers) {
        this.drive = drive;
        this.gears = gears;
        this.levers = levers;
    }

    @Override
    public void row(Moment m) {
        boolean now = m.isPedalPressed();
        if (now && !pressed) {
            press(m);
        }
        double shaft = m.get(Signal.INPUT_SHAFT_SPEED);
        if (now) {
            roll(m, shaft);
        }
        if (!now && isAfoot()) {
            afterwards(m);
        }
        pressed = now;
    }

    /** Whether a press is under way, or what follows it is still to be seen. */
    boolean isWatching() {
        return pressed || isAfoot();
    }

    private boolean isAfoot() {
        return gear != NONE || firstLine > 0;
    }

    private void press(Moment m) {
        GearRun run = gears.current;
        boolean inHand = run != null
                && !drive.table().gear(run.gear).isReverse()
                && (m.micros() - run.endMicros) / 1e6 < IN_HAND_SECONDS;
        gear = inHand ? run.gear : NONE;
        taken = Optional.empty();
        wentToNeutral = !inHand;
        leverKnown = false;
        byShaft = false;
        peakRpm = 0;
        firstLine = 0;
        rowsAgain = 0;
    }

    private void roll(Moment m, double shaft) {
        double position = m.leverPosition();
        leverKnown |= !Double.isNaN(position);
        wentToNeutral |= position == 0;
        releasedMicros = m.micros();
        boolean told = shaft > 0;
        double disc = told ? shaft : ratio() * m.outputRpm(drive.perKmh());
        if (!(disc > LIMIT * drive.table().governedRpm()) || m.rpm() > WITH_THE_ENGINE * disc) {
            return;
        }
        byShaft |= told;
        taken = wentToNeutral && !told ? levers.least() : taken;
        if (firstLine == 0) {
            firstLine = m.line();
            overFrom = m.micros();
        }
        overTo = m.micros();
        lastLine = m.line();
        if (disc > peakRpm) {
            peakRpm = disc;
            kmh = m.kmh();
            engineRpm = m.rpm();
        }
    }

    /** Of the gear that turns the disc, the least of those that may; 0 where none is known to. */
    private double ratio() {
        return wentToNeutral
                ? levers.least().map(KnobGear::ratio).orElse(0.0)
                : drive.table().gear(gear).ratio();
    }

    private void afterwards(Moment m) {
        boolean shown = byShaft || taken.isPresent() || !wentToNeutral;
        boolean worthIt = firstLine > 0 && (overTo - overFrom) / 1e6 >= LEAST_SECONDS && shown;
        rowsAgain += m.inHand() == gear ? 1 : 0;
        boolean again = rowsAgain >= AGAIN_ROWS;
        if (worthIt && (byShaft || again || leverKnown)) {
            found();
        }
        if (!worthIt || byShaft || again || leverKnown || (m.micros() - releasedMicros) / 1e6 > AGAIN_SECONDS) {
            forget();
        }
    }

    private void forget() {
        gear = NONE;
        firstLine = 0;
    }

    private void found() {
        Optional<String> name =
                (wentToNeutral ? taken : Optional.of(drive.table().gear(gear))).map(KnobGear::name);
        double times = peakRpm / drive.table().governedRpm();
        drive.found()
                .accept(HabitEvent.of(
                        EventKind.DISC_OVERSPEED,
                        new HabitEvent.Stretch(
                                overFrom, (overTo - overFrom) / 1e6, firstLine, lastLine, kmh, engineRpm),
                        new HabitEvent.Gears(name, name),
                        times * times / (LIMIT * LIMIT),
                        byShaft || leverKnown ? 0.9 : 0.75,
                        EventFigures.of(EventFigure.DISC_RPM, peakRpm).and(EventFigure.GOVERNED_MULTIPLE, times),
                        Drive.words(
                                "Pedal down%s at up to %.0f km/h: the road turned the clutch disc at %.0f rpm, %.2f times"
                                        + " governed speed, for %.1f s, with the engine at %.0f rpm%s.",
                                name.map(n -> " in " + n).orElse(""),
                                kmh,
                                peakRpm,
                                times,
                                (overTo - overFrom) / 1e6,
                                engineRpm,
                                how())));
    }

    private String how() {
        if (byShaft) {
            return ", by the input shaft";
        }
        if (taken.isPresent()) {
            return "; the lever took the gear with the pedal down";
        }
        return leverKnown ? "" : " (the same gear before and after; the log has no lever)";
    }

    @Override
    public void interrupted() {
        forget();
        pressed = false;
    }
}
