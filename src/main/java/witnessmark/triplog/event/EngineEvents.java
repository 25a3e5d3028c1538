package witnessmark.triplog.event;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;

/** Engine above governed speed, and pulling hard below the lowest pulling speed. */
final class EngineEvents implements Detector {
    private static final double OVERSPEED_SECONDS = 0.4;
    private static final double IN_ONE_GEAR_SECONDS = 2;
    private static final double LUG_KMH = 8;
    /** A shift that landed low: not far below, and the engine gains so many rpm a second; common practice, no source. */
    private static final double LANDED_LOW = 0.8;

    private static final double GAINING_RPM_PER_SECOND = 20;
    /** Or, however low it landed, so many: that is over in a moment. */
    private static final double GAINING_FAST_RPM_PER_SECOND = 100;

    private static final double LONGEST_LANDING_SECONDS = 3.5;

    private final Drive drive;
    private final LastGears gears;
    private final LastingCondition overspeed;
    private final LastingCondition lugging;
    private long inGearSince;
    private int gear = InHand.CANNOT_TELL;
    private boolean inOneGear;
    private Optional<String> gearAtSpeed = Optional.empty();
    private long lastStanding = Long.MIN_VALUE / 2;

    EngineEvents(Drive drive, LastGears gears) {
        this.drive = drive;
        this.gears = gears;
        this.overspeed = new LastingCondition(OVERSPEED_SECONDS, 0.5, this::oversped);
        this.lugging = new LastingCondition(drive.limits().lugSeconds(), 0.4, this::lugged);
    }

    @Override
    public void row(Moment m) {
        if (m.inHand() != gear) {
            gear = m.inHand();
            inGearSince = m.micros();
        }
        if (m.inHand() == InHand.STANDING) {
            lastStanding = m.micros();
        }
        lookForOverspeed(m);
        boolean lug = m.isInGear()
                && m.rpm() < 0.97 * drive.table().lowestPullingRpm()
                && m.load() >= drive.limits().lugLoadPercent()
                && m.kmh() > LUG_KMH
                && m.micros() - lastStanding > 4_000_000
                && !m.isPedalPressed();
        if (lug || lugging.isOpen()) {
            lugging.look(m, lug, 1 - m.rpm() / drive.table().lowestPullingRpm());
        }
    }

    private void lookForOverspeed(Moment m) {
        boolean over = m.rpm() > drive.table().governedRpm() * drive.limits().overspeedMargin();
        if (over && !overspeed.isOpen()) {
            inOneGear = m.isInGear() && (m.micros() - inGearSince) / 1e6 >= IN_ONE_GEAR_SECONDS;
            gearAtSpeed = Optional.empty();
        }
        if (over && m.isInGear()) {
            gearAtSpeed = Optional.of(drive.table().gear(m.inHand()).name());
        }
        if (over || overspeed.isOpen()) {
            overspeed.look(m, over, m.rpm());
        }
    }

    @Override
    public boolean isOpen() {
        return overspeed.isOpen() || lugging.isOpen();
    }

    @Override
    public void interrupted() {
        overspeed.end();
        lugging.end();
        gear = InHand.CANNOT_TELL;
    }

    private void oversped(LastingCondition spell) {
        double share = spell.highestRpm / drive.table().governedRpm();
        @Nullable GearRun last = gears.previous;
        Optional<String> before = inOneGear || last == null
                ? gearAtSpeed
                : Optional.of(drive.table().gear(last.gear).name());
        String how = gearAtSpeed.isEmpty()
                ? "with no gear in hand that the ratios show"
                : inOneGear ? "in one unchanged ratio, " + gearAtSpeed.get() : "after a change to " + gearAtSpeed.get();
        drive.found()
                .accept(HabitEvent.of(
                        EventKind.ENGINE_OVERSPEED,
                        new HabitEvent.Stretch(
                                spell.startMicros,
                                spell.seconds(),
                                spell.firstLine,
                                spell.lastLine,
                                spell.highestKmh,
                                spell.highestRpm),
                        new HabitEvent.Gears(before, gearAtSpeed),
                        (share - 1) / 0.1,
                        0.95,
                        EventFigures.of(EventFigure.GOVERNED_MULTIPLE, share)
                                .and(EventFigure.IN_ONE_GEAR, inOneGear ? 1 : 0),
                        Drive.words(
                                "Engine at %.0f rpm, %.2f times governed speed, for %.1f s %s.",
                                spell.highestRpm, share, spell.seconds(), how)));
    }

    /** Whether the engine only picked up speed after a shift that landed low. */
    private boolean isLanding(LastingCondition spell) {
        double least = spell.lowestRpm > LANDED_LOW * drive.table().lowestPullingRpm()
                ? GAINING_RPM_PER_SECOND
                : GAINING_FAST_RPM_PER_SECOND;
        return spell.seconds() < LONGEST_LANDING_SECONDS && spell.endRpm - spell.startRpm > least * spell.seconds();
    }

    private void lugged(LastingCondition spell) {
        if (isLanding(spell)) {
            return;
        }
        String name = InHand.word(drive.table(), spell.gear);
        drive.found(
                EventKind.LUGGING,
                spell,
                HabitEvent.Gears.in(name),
                spell.peak / 0.15 * Math.min(1, 0.5 + spell.seconds() / 20),
                0.9,
                EventFigures.of(EventFigure.LOWEST_RPM, spell.lowestRpm),
                Drive.words(
                        "Pulled hard in %s down to %.0f rpm for %.1f s; %.0f rpm is the lowest pulling speed.",
                        name, spell.lowestRpm, spell.seconds(), drive.table().lowestPullingRpm()));
    }
}
