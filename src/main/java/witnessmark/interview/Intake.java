package witnessmark.interview;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.GearboxSet;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.history.VehicleSet;
import witnessmark.gearbox.Layout;

/** Turns the answers about truck, gearbox and complaint into changes of the case. */
final class Intake {
    private Intake() {}

    /** The change for an answer; empty where nothing was said. Throws {@link NotAnAnswer} for one that does not fit. */
    static Optional<Change> change(Stage stage, String answer, CaseFile now) {
        String said = answer.strip();
        if (said.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                switch (stage) {
                    case TRUCK -> new VehicleSet(
                            truck(now.vehicle(), said, now.vehicle().odometerKm()));
                    case KILOMETRES -> new VehicleSet(
                            truck(now.vehicle(), now.vehicle().unit(), OptionalDouble.of(kilometres(said))));
                    case FORWARD_RATIOS, RANGE, SPLITTER, COUNTERSHAFTS, LINKAGE -> new GearboxSet(
                            layout(stage, said, now.gearbox()));
                    case UNIT_STATE -> new TextSet(TextField.UNIT_STATE, unitState(said));
                    case COMPLAINT -> new TextSet(TextField.COMPLAINT, said);
                    case ACCOUNT -> new TextSet(TextField.DRIVER_ACCOUNT, said);
                    case CHECKS -> throw new IllegalArgumentException("a check is no part of the intake");
                });
    }

    private static String unitState(String said) {
        return UnitState.parse(said.toLowerCase(Locale.ROOT))
                .orElseThrow(() -> new NotAnAnswer("refused.no-choice", said, String.join(", ", UnitState.words())))
                .word();
    }

    private static Vehicle truck(Vehicle v, String unit, OptionalDouble odometerKm) {
        return new Vehicle(unit, v.serial(), v.duty(), odometerKm, v.kmSinceNew(), v.kmSinceRepair(), v.repairNote());
    }

    /** Kilometres, also given in miles: "512000", "512 000 km", "318,000 mi". */
    private static double kilometres(String said) {
        String plain = said.toLowerCase(Locale.ROOT).replaceAll("[ ,']", "");
        boolean miles = plain.endsWith("mi") || plain.endsWith("miles");
        String number = plain.replaceAll("(km|miles|mi)$", "");
        double times = number.endsWith("million") ? 1e6 : number.endsWith("k") ? 1e3 : 1;
        String digits = number.replaceAll("(million|k)$", "");
        boolean bare = digits.equals(plain) && digits.matches("\\d{1,3}");
        if (bare || !digits.matches("\\d{1,9}(\\.\\d+)?")) {
            throw new NotAnAnswer("refused.no-distance", said);
        }
        return Math.rint(Double.parseDouble(digits) * times * (miles ? 1.609344 : 1));
    }

    private static Layout layout(Stage stage, String said, Layout l) {
        OptionalInt ratios = stage == Stage.FORWARD_RATIOS ? ratios(said) : l.forwardRatios();
        return new Layout(
                ratios,
                stage == Stage.RANGE ? word(stage, said, Layout.RangeShift.class) : l.range(),
                stage == Stage.SPLITTER ? word(stage, said, Layout.Splitter.class) : l.splitter(),
                stage == Stage.COUNTERSHAFTS ? word(stage, said, Layout.Countershafts.class) : l.countershafts(),
                stage == Stage.LINKAGE ? word(stage, said, Layout.Linkage.class) : l.linkage(),
                l.oilPump(),
                l.oilCooler(),
                l.powerTakeOff());
    }

    private static OptionalInt ratios(String said) {
        if (!said.matches("\\d{1,2}") || Integer.parseInt(said) < 1 || Integer.parseInt(said) > 32) {
            throw new NotAnAnswer("refused.no-ratios", said);
        }
        return OptionalInt.of(Integer.parseInt(said));
    }

    private static <E extends Enum<E>> Optional<E> word(Stage stage, String said, Class<E> type) {
        List<String> allowed = stage.choices();
        String plain = said.toLowerCase(Locale.ROOT);
        if (!allowed.contains(plain)) {
            throw new NotAnAnswer("refused.no-choice", said, String.join(", ", allowed));
        }
        return Optional.of(Enum.valueOf(type, plain.toUpperCase(Locale.ROOT).replace('-', '_')));
    }
}
