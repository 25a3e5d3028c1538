package witnessmark.triplog.read;

/** Puts the time of a row together from its time field, its date field if it has one, and the midnights gone by. */
final class CsvClock {
    private static final long HALF_DAY = 43_200_000_000L;

    private final TimeForm timeForm;
    private final TimeForm dateForm;
    private final boolean timeIsNumber;
    private final boolean dateIsNumber;
    private final boolean countsMidnights;

    private long time;
    private long date;
    private boolean bad;
    private long midnights;
    private long lastInDay;

    CsvClock(CsvPlan plan) {
        timeForm = plan.timeForm;
        dateForm = plan.dateForm.orElse(timeForm);
        timeIsNumber = timeForm.isNumber();
        dateIsNumber = dateForm.isNumber();
        countsMidnights = timeForm.isTimeOfDay() && plan.dateForm.isEmpty();
    }

    void beginRow() {
        bad = false;
        date = 0;
    }

    /** Whether the column, of time or date, is written as a number. */
    boolean isNumber(int action) {
        return action == CsvPlan.TIME ? timeIsNumber : dateIsNumber;
    }

    void takeNumber(int action, long mantissa, int decimals) {
        take(action, form(action).fromNumber(mantissa, decimals));
    }

    void takeText(int action, byte[] bytes, int from, int to) {
        take(action, form(action).read(bytes, from, to));
    }

    void takeNothing() {
        bad = true;
    }

    private TimeForm form(int action) {
        return action == CsvPlan.TIME ? timeForm : dateForm;
    }

    private void take(int action, long micros) {
        bad |= TimeForm.isBad(micros);
        if (action == CsvPlan.TIME) {
            time = micros;
        } else {
            date = micros;
        }
    }

    boolean isBad() {
        return bad;
    }

    /** The time of the row; to be asked once for each row. */
    long micros() {
        return date + time + countMidnights();
    }

    /** For times of day without a date: each fall by more than half a day is a midnight. */
    private long countMidnights() {
        if (!countsMidnights) {
            return 0;
        }
        if (lastInDay - time > HALF_DAY) {
            midnights += 2 * HALF_DAY;
        }
        lastInDay = time;
        return midnights;
    }
}
