package witnessmark.triplog.event;

/**
 * Rolling fast with a low gear in and the pedal down: the road turns the clutch disc above any engine speed. The gear is
 * taken from the ratio before the press and must be in hand again after it, or the lever must say that it stayed in.
 */
final class DiscEvents implements Detector {
    /** Beyond this multiple of governed speed a disc may burst; the clutch maker's own limit goes before it. */
    private static final double LIMIT = 1.25;

    private static final double LEAST_SECONDS = 0.5;
    private static final double IN_HAND_SECONDS = 1.5;
    private static final double AGAIN_SECONDS = 3;
    private static final int AGAIN_ROWS = 3;
    private static final int NONE = -1;

    private final Drive drive;
    private final LastGears gears;
    private boolean pressed;
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

    DiscEvents(Drive drive, LastGears gears) {
        this.drive = drive;
        this.gears = gears;
    }

    @Override
    public void row(Moment m) {
        boolean now = m.isPedalPressed();
        if (now && !pressed) {
            press(m);
        }
        if (now && gear != NONE) {
            roll(m);
        }
        if (!now && gear != NONE) {
            afterwards(m);
        }
        pressed = now;
    }

    /** Whether a press is under way, or what follows it is still to be seen. */
    boolean isWatching() {
        return pressed || gear != NONE;
    }

    private void press(Moment m) {
        GearRun run = gears.current;
        boolean inHand = run != null
                && !drive.table().gear(run.gear).isReverse()
                && (m.micros() - run.endMicros) / 1e6 < IN_HAND_SECONDS;
        gear = inHand ? run.gear : NONE;
        wentToNeutral = false;
        leverKnown = false;
        peakRpm = 0;
        firstLine = 0;
        rowsAgain = 0;
    }

    private void roll(Moment m) {
        double position = m.leverPosition();
        leverKnown |= !Double.isNaN(position);
        wentToNeutral |= position == 0;
        releasedMicros = m.micros();
        double disc = drive.table().gear(gear).ratio() * m.outputRpm(drive.perKmh());
        if (!(disc > LIMIT * drive.table().governedRpm()) || wentToNeutral) {
            return;
        }
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

    private void afterwards(Moment m) {
        boolean worthIt = firstLine > 0 && (overTo - overFrom) / 1e6 >= LEAST_SECONDS && !wentToNeutral;
        rowsAgain += m.inHand() == gear ? 1 : 0;
        boolean again = rowsAgain >= AGAIN_ROWS;
        if (worthIt && (again || leverKnown)) {
            found();
        }
        if (!worthIt || again || leverKnown || (m.micros() - releasedMicros) / 1e6 > AGAIN_SECONDS) {
            gear = NONE;
        }
    }

    private void found() {
        String name = drive.table().gear(gear).name();
        double times = peakRpm / drive.table().governedRpm();
        drive.found()
                .accept(HabitEvent.of(
                        EventKind.DISC_OVERSPEED,
                        new HabitEvent.Stretch(
                                overFrom, (overTo - overFrom) / 1e6, firstLine, lastLine, kmh, engineRpm),
                        HabitEvent.Gears.in(name),
                        times * times / (LIMIT * LIMIT),
                        leverKnown ? 0.9 : 0.75,
                        Figures.of(Figure.DISC_RPM, peakRpm).and(Figure.GOVERNED_MULTIPLE, times),
                        Drive.words(
                                "Pedal down in %s at up to %.0f km/h: the road turned the clutch disc at %.0f rpm, %.2f times"
                                        + " governed speed, for %.1f s, with the engine at %.0f rpm%s.",
                                name,
                                kmh,
                                peakRpm,
                                times,
                                (overTo - overFrom) / 1e6,
                                engineRpm,
                                leverKnown ? "" : " (the same gear before and after; the log has no lever)")));
    }

    @Override
    public void interrupted() {
        gear = NONE;
        pressed = false;
    }
}
