package witnessmark.triplog.event;

import java.util.List;
import java.util.Optional;
import witnessmark.triplog.gear.Gear;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.Signal;

/** Looks at the first settled gear after each standstill. */
final class StartEvents implements Detector {
    private static final double STANDING_SECONDS = 1;
    private static final double LONGEST_START_SECONDS = 30;
    private static final double LEAST_CONFIDENCE = 0.6;
    /** An engine that was this much faster on the way, wheels turning, was pulled down by a shift that did not show. */
    private static final double HIDDEN_SHIFT = 1.3;

    private static final double WHEELS_TURN_KMH = 4;

    private final Drive drive;
    private double stoodSeconds;
    private boolean starting;
    private long movedMicros;
    private long movedLine;
    private double mass = Double.NaN;
    private double highestRpm;

    StartEvents(Drive drive) {
        this.drive = drive;
    }

    @Override
    public void row(Moment m) {
        if (m.inHand() == InHand.STANDING) {
            stoodSeconds += m.seconds();
            // The first row or two of a start may read as standing again; a real stop lasts.
            starting &= stoodSeconds < STANDING_SECONDS;
            return;
        }
        if (!starting && stoodSeconds >= STANDING_SECONDS && m.kmh() >= 0.8) {
            starting = true;
            movedMicros = m.micros();
            movedLine = m.line();
            mass = m.get(Signal.GROSS_MASS);
            highestRpm = 0;
        }
        if (!Double.isNaN(m.kmh())) {
            stoodSeconds = 0;
        }
        if (starting && m.kmh() > WHEELS_TURN_KMH && m.rpm() > highestRpm) {
            highestRpm = m.rpm();
        }
        if (starting && (m.inHand() == InHand.ENGINE_OFF || m.isPedalPressed() && m.kmh() > 15)) {
            starting = false;
        }
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
        if (!starting) {
            return;
        }
        starting = false;
        double took = (run.startMicros - movedMicros) / 1e6;
        Gear gear = drive.table().gear(run.gear);
        if (took > LONGEST_START_SECONDS || gear.isReverse()) {
            return;
        }
        drive.chances().count(EventKind.Chance.START);
        if (highestRpm > HIDDEN_SHIFT * run.endRpm) {
            return;
        }
        if (gear.range() == Gear.Range.HIGH) {
            found(EventKind.START_IN_HIGH_RANGE, run, gear, drive.table().rangeStep() / 2, took, highRangeWords(gear));
        } else if (tooHigh(gear)) {
            double heat = Math.pow(limit().ratio() / gear.ratio(), 2);
            found(EventKind.START_GEAR_TOO_HIGH, run, gear, heat / 2, took, tooHighWords(gear, heat));
        }
    }

    private String highRangeWords(Gear gear) {
        return Drive.words(
                "Start from rest in %s, a high-range gear: the mainshaft carries %.1f times the torque of the same start in"
                        + " low range.",
                gear.name(), drive.table().rangeStep());
    }

    private String tooHighWords(Gear gear, double heat) {
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

    private boolean tooHigh(Gear gear) {
        return gear.ratio() < limit().ratio() * 0.999;
    }

    /** The tallest proper start gear: given for the truck, or the second lever gear of low range loaded, third empty. */
    private Gear limit() {
        GearTable table = drive.table();
        boolean loaded = drive.limits().load() == HabitLimits.Load.LOADED;
        Optional<Gear> given = table.highestStartGear()
                .map(s -> loaded ? s.loaded() : s.empty())
                .flatMap(name -> table.gears().stream()
                        .filter(g -> g.name().equals(name))
                        .findFirst());
        if (given.isPresent()) {
            return given.get();
        }
        List<Integer> levers = table.gears().stream()
                .filter(g -> g.range() != Gear.Range.HIGH && !g.isReverse())
                .map(Gear::lever)
                .distinct()
                .toList();
        int tallest = levers.get(Math.min(loaded ? 1 : 2, levers.size() - 1));
        return table.gears().stream()
                .filter(g -> g.range() != Gear.Range.HIGH && g.lever() == tallest)
                .reduce((a, b) -> b)
                .orElseThrow();
    }

    private void found(EventKind kind, GearRun run, Gear gear, double severity, double took, String sentence) {
        double confidence = run.confidence() * (drive.limits().load() == HabitLimits.Load.UNKNOWN ? 0.95 : 1);
        if (confidence < LEAST_CONFIDENCE) {
            return;
        }
        drive.found()
                .accept(new HabitEvent(
                        kind,
                        movedMicros,
                        took,
                        movedLine,
                        run.lastLine,
                        run.endKmh,
                        run.highestRpm,
                        Optional.empty(),
                        Optional.of(gear.name()),
                        severity,
                        confidence,
                        Double.isNaN(mass)
                                ? Drive.figures("slip-seconds", took)
                                : Drive.figures("slip-seconds", took, "gross-mass-kg", mass),
                        sentence));
    }
}
