package witnessmark.triplog.event;

import java.util.List;
import java.util.Optional;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/** Looks at the first settled gear after each standstill. */
final class StartEvents implements Detector {
    private static final double STANDING_SECONDS = 1;
    /** A start that took longer held more than a clutch taking hold. */
    private static final double LONGEST_START_SECONDS = 12;

    /** Where pedal or lever show that no other gear came between, the clutch may have slipped for longer. */
    private static final double LONGEST_SLIP_SECONDS = 25;

    /** A fall of engine speed by this share, wheels turning, is a shift that did not show; a clutch takes less. */
    private static final double HIDDEN_SHIFT = 0.18;

    /** Between rows farther apart than two a second the engine has come up again in part. */
    private static final double FAR_APART_SECONDS = 0.75;

    private static final double HIDDEN_BETWEEN_ROWS = 0.1;

    private static final double WHEELS_TURN_KMH = 4;
    /** Faster than this with the pedal down and the engine at idle, the truck rolls and is not being started. */
    private static final double ROLLS_KMH = 15;

    /** No truck is this fast at once after a standstill; its speed had stood still at 0, or rows are missing. */
    private static final double LEAP_KMH = 8;

    private static final double LEAP_KMH_PER_SECOND = 6;
    private static final double IDLING = 1.15;
    private static final double UP_SECONDS = 0.4;
    /** Between rows farther apart a shorter gear may have been passed through. */
    private static final double SURE_SECONDS = 0.4;

    private static final double PASSED_UNSEEN = 0.9;

    private final Drive drive;
    private final Trust trust;
    private final Runnable withoutPedal;
    private double stoodSeconds;
    private long stoodMicros;
    private boolean starting;
    private long movedMicros;
    private long movedLine;
    private double mass = Double.NaN;
    private double highestRpm;
    /** Seconds between the last two rows. */
    private double apart;

    private boolean pedalGiven;
    private boolean pressed;
    private long upMicros;
    /** How long the pedal was up, or not known, with no gear in hand yet. */
    private double upSeconds;

    private double lever;
    /** Whether the lever was in a gear at any time since the wheels began to turn. */
    private boolean wasInGear;
    /** Whether a row on the way did not tell where the lever stood. */
    private boolean wasUntold;
    /** Whether the pedal or the lever says that the first gear was changed for another before it showed. */
    private boolean changed;

    /** @param withoutPedal told of each start at which the clutch signal had the pedal up */
    StartEvents(Drive drive, Trust trust, Runnable withoutPedal) {
        this.drive = drive;
        this.trust = trust;
        this.withoutPedal = withoutPedal;
    }

    @Override
    public void row(Moment m) {
        pedalGiven = m.isPedalGiven();
        apart = m.seconds();
        pressed &= m.inHand() != InHand.STANDING || stoodSeconds > 0 || starting;
        pressed |= m.isPedalShownPressed();
        if (m.inHand() == InHand.STANDING) {
            stoodSeconds += m.seconds();
            stoodMicros = m.micros();
            // The first row or two of a start may read as standing again; a real stop lasts.
            starting &= stoodSeconds < STANDING_SECONDS;
            return;
        }
        if (!starting && stoodSeconds >= STANDING_SECONDS && m.kmh() >= 0.8 && !leaps(m)) {
            starting = true;
            movedMicros = m.micros();
            movedLine = m.line();
            mass = m.get(Signal.GROSS_MASS);
            highestRpm = 0;
            upMicros = 0;
            upSeconds = 0;
            lever = Double.NaN;
            wasInGear = false;
            wasUntold = false;
            changed = false;
        }
        if (!Double.isNaN(m.kmh())) {
            stoodSeconds = 0;
        }
        // Where rows come close, neither a pedal that is down nor a lever that is in hides a shift: the clutch takes
        // hold
        // by fits.
        boolean inGear = !Double.isNaN(m.leverPosition()) && m.leverPosition() != 0;
        boolean shown = (m.isPedalShownPressed() || inGear) && apart <= SURE_SECONDS;
        if (starting && m.kmh() > WHEELS_TURN_KMH && !shown) {
            highestRpm = Math.max(highestRpm, m.rpm());
            changed |= m.rpm() < (1 - (apart > FAR_APART_SECONDS ? HIDDEN_BETWEEN_ROWS : HIDDEN_SHIFT)) * highestRpm;
        }
        boolean rolls = m.isPedalPressed()
                && m.kmh() > ROLLS_KMH
                && m.rpm() < IDLING * drive.table().idleRpm();
        if (starting && (m.inHand() == InHand.ENGINE_OFF || rolls || rollsOff(m))) {
            starting = false;
        }
        if (starting) {
            watch(m);
        }
    }

    /** The truck rolls off by itself, the lever in neutral ever since. */
    private boolean rollsOff(Moment m) {
        return m.kmh() > WHEELS_TURN_KMH && m.leverPosition() == 0 && !wasInGear;
    }

    private boolean leaps(Moment m) {
        return m.kmh() > LEAP_KMH + LEAP_KMH_PER_SECOND * (m.micros() - stoodMicros) / 1e6;
    }

    private void watch(Moment m) {
        if (m.isPedalPressed()) {
            changed |= upMicros > 0 && (m.micros() - upMicros) / 1e6 >= UP_SECONDS;
            upMicros = 0;
        } else if (m.isPedalKnown() && upMicros == 0) {
            upMicros = m.micros();
        }
        upSeconds += m.isPedalPressed() || m.isInGear() ? 0 : m.seconds();
        double position = m.leverPosition();
        wasUntold |= Double.isNaN(position);
        changed |= wasInGear && position == 0;
        wasInGear |= !Double.isNaN(position) && position != 0;
        double now = m.get(Signal.LEVER);
        changed |= now != lever && !Double.isNaN(now) && !Double.isNaN(lever);
        lever = Double.isNaN(now) ? lever : now;
    }

    @Override
    public void interrupted() {
        starting = false;
        stoodSeconds = 0;
    }

    /** Whether the truck has stood for so long that standing on changes nothing. */
    boolean hasStood() {
        return stoodSeconds >= STANDING_SECONDS;
    }

    boolean isStarting() {
        return starting;
    }

    void settled(GearRun run) {
        KnobGear gear = drive.table().gear(run.gear);
        if (!starting) {
            return;
        }
        starting = false;
        double took = (run.startMicros - movedMicros) / 1e6;
        boolean held = wasInGear && !changed && !wasUntold;
        boolean slipped = held || pedalGiven && (apart <= SURE_SECONDS || upSeconds < UP_SECONDS);
        if (took > (slipped ? LONGEST_SLIP_SECONDS : LONGEST_START_SECONDS) || gear.isReverse()) {
            return;
        }
        if (pedalGiven) {
            trust.started(pressed);
            if (!pressed) {
                withoutPedal.run();
            }
        }
        boolean high = gear.range() == KnobGear.Range.HIGH || tooHigh(gear);
        if (changed && high) {
            // The first gear was a shorter one, but which cannot be told.
            return;
        }
        drive.chances().count(EventKind.Chance.START);
        if (gear.range() == KnobGear.Range.HIGH) {
            found(EventKind.START_IN_HIGH_RANGE, run, gear, drive.table().rangeStep() / 2, took, highRangeWords(gear));
        } else if (tooHigh(gear)) {
            double heat = Math.pow(limit().ratio() / gear.ratio(), 2);
            found(EventKind.START_GEAR_TOO_HIGH, run, gear, heat / 2, took, tooHighWords(gear, heat));
        }
    }

    private String highRangeWords(KnobGear gear) {
        return Drive.words(
                "Start from rest in %s, a high-range gear: the mainshaft carries %.1f times the torque of the same start in"
                        + " low range.",
                gear.name(), drive.table().rangeStep());
    }

    private String tooHighWords(KnobGear gear, double heat) {
        return Drive.words(
                "Start from rest in %s; %s is the tallest start gear (%s). The clutch took about %.1f times the heat.",
                gear.name(),
                limit().name(),
                switch (drive.limits().load()) {
                    case LOADED -> "loaded";
                    case EMPTY -> "empty";
                    case UNKNOWN -> "load not known, so that of an empty truck";
                },
                heat);
    }

    private boolean tooHigh(KnobGear gear) {
        return gear.ratio() < limit().ratio() * 0.999;
    }

    /** The tallest proper start gear: given for the truck, or the second main-box gear of low range loaded, third empty. */
    private KnobGear limit() {
        GearTable table = drive.table();
        boolean loaded = drive.limits().load() == HabitLimits.Load.LOADED;
        Optional<KnobGear> given = table.highestStartGear()
                .map(s -> loaded ? s.loaded() : s.empty())
                .flatMap(name -> table.gears().stream()
                        .filter(g -> g.name().equals(name))
                        .findFirst());
        if (given.isPresent()) {
            return given.get();
        }
        List<Integer> levers = table.gears().stream()
                .filter(g -> g.range() != KnobGear.Range.HIGH && !g.isReverse())
                .map(KnobGear::lever)
                .distinct()
                .toList();
        int tallest = levers.get(Math.min(loaded ? 1 : 2, levers.size() - 1));
        return table.gears().stream()
                .filter(g -> g.range() != KnobGear.Range.HIGH && g.lever() == tallest)
                .reduce((a, b) -> b)
                .orElseThrow();
    }

    private void found(EventKind kind, GearRun run, KnobGear gear, double severity, double took, String sentence) {
        double confidence = run.confidence()
                * (drive.limits().load() == HabitLimits.Load.UNKNOWN ? 0.95 : 1)
                * (apart > SURE_SECONDS ? PASSED_UNSEEN : 1);
        if (confidence < Drive.LEAST_CONFIDENCE) {
            return;
        }
        drive.found()
                .accept(HabitEvent.of(
                        kind,
                        new HabitEvent.Stretch(movedMicros, took, movedLine, run.lastLine, run.endKmh, run.highestRpm),
                        HabitEvent.Gears.into(gear.name()),
                        severity,
                        confidence,
                        Double.isNaN(mass)
                                ? EventFigures.of(EventFigure.SLIP_SECONDS, took)
                                : EventFigures.of(EventFigure.SLIP_SECONDS, took)
                                        .and(EventFigure.GROSS_MASS_KG, mass),
                        sentence));
    }
}
