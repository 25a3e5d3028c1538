package witnessmark.triplog.event;

import witnessmark.triplog.signal.Signal;

/**
 * What happened between two settled gears: the lowest road speed, and when the range moved, where knob and lever tell.
 * The range follows its knob only while the lever is out of gear.
 */
final class Gap {
    private static final int UNKNOWN = -1;
    /** An engine gains so much from one row to the next only by its accelerator, or by the road through a clutch let in. */
    private static final double DRIVEN_UP_RPM = 100;

    private static final double FOOT_OFF_PERCENT = 2;

    /** Where the range moved to low; nothing is assumed of rows in which the lever or the knob is not known. */
    record Move(long micros, long line, double kmh) {}

    private final double governedRpm;
    private final double overspeedRpm;
    private double lowestKmh = Double.NaN;
    /** Whether the engine was at governed speed or below since the last row in gear. */
    private boolean slowed;

    private double drivenRpm;
    /** Road speed at which the road began to drive the engine up, the foot off the accelerator; 0 if that did not show. */
    private double drivenUpKmh;

    private double rpmBefore = Double.NaN;
    private boolean footOff;
    private final LastSpeed speed = new LastSpeed();
    private int range = UNKNOWN;
    private Move toLow = new Move(Long.MIN_VALUE, 0, Double.NaN);

    /** @param overspeedMargin multiple of governed speed beyond which only the road turns an engine */
    Gap(double governedRpm, double overspeedMargin) {
        this.governedRpm = governedRpm;
        this.overspeedRpm = overspeedMargin * governedRpm;
    }

    /** The gear in hand goes on. */
    void inGear(Moment m) {
        lowestKmh = m.kmh();
        slowed = false;
        drivenRpm = 0;
        drivenUpKmh = 0;
        // Rows of steady driving are not all seen.
        rpmBefore = Double.NaN;
    }

    void between(Moment m) {
        if (!(m.kmh() >= lowestKmh)) {
            lowestKmh = Double.isNaN(m.kmh()) ? lowestKmh : m.kmh();
        }
        followDriven(m);
        slowed |= m.rpm() <= governedRpm;
        if (slowed && m.rpm() > overspeedRpm) {
            drivenRpm = Math.max(drivenRpm, m.rpm());
        }
    }

    private void followDriven(Moment m) {
        double pedal = m.get(Signal.ACCELERATOR);
        boolean off = pedal < FOOT_OFF_PERCENT;
        boolean rises = off && footOff && m.rpm() - rpmBefore > DRIVEN_UP_RPM;
        drivenUpKmh = rises ? Math.max(drivenUpKmh, m.kmh()) : m.rpm() < rpmBefore - DRIVEN_UP_RPM ? 0 : drivenUpKmh;
        footOff = off;
        rpmBefore = m.rpm();
    }

    /** Road speed in km/h at which the gear that now drives the engine was in already; 0 if that did not show. */
    double drivenUpKmh() {
        return drivenUpKmh;
    }

    /** Follows the range, in gear and out of it. */
    void followRange(double knob, double position, Moment m) {
        double kmh = speed.at(m);
        if (position != 0 || Double.isNaN(knob)) {
            return;
        }
        int now = knob > 0.5 ? 1 : 0;
        if (range == 1 && now == 0 && !Double.isNaN(kmh)) {
            toLow = new Move(m.micros(), m.line(), kmh);
        }
        range = now;
    }

    /** Lowest road speed since the last row in gear, NaN if none was given. */
    double lowestKmh() {
        return lowestKmh;
    }

    /** Highest engine speed, in rpm, at which the next gear must have been in already: the road drove the engine; else 0. */
    double drivenRpm() {
        return drivenRpm;
    }

    /** Road speed in km/h at which the range moved to low between the two times; NaN if knob and lever do not tell. */
    double rangeToLowKmh(long fromMicros, long toMicros) {
        return toLow.micros() >= fromMicros && toLow.micros() <= toMicros ? toLow.kmh() : Double.NaN;
    }

    void forget() {
        lowestKmh = Double.NaN;
        slowed = false;
        drivenRpm = 0;
        drivenUpKmh = 0;
        rpmBefore = Double.NaN;
        footOff = false;
        range = UNKNOWN;
        speed.forget();
    }
}
