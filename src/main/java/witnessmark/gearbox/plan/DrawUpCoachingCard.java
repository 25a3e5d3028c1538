package witnessmark.gearbox.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Splitter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.plan.CoachingPoint.Topic;
import witnessmark.gearbox.speed.RoadSpeeds;
import witnessmark.gearbox.speed.RoadSpeeds.Ceiling;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.Steps;
import witnessmark.gearbox.start.StartGears;

/** Draws up the coaching card of a truck from its profile. */
public final class DrawUpCoachingCard {

    /** How far over the ceiling the card's example goes: a usual misjudgement. */
    private static final double EXAMPLE_EXCESS = 1.25;

    /** A saving of less than a twentieth is none. */
    private static final double WORTH_TELLING = 0.95;

    private final TruckProfile truck;
    private final RoadSpeeds speeds;
    private final ShiftPlan plan;

    public DrawUpCoachingCard(TruckProfile truck) {
        this.truck = truck;
        this.speeds = new RoadSpeeds(truck);
        this.plan = ShiftPlan.of(truck);
    }

    public CoachingCard card() {
        List<Ceiling> ceilings = speeds.lowRangeCeilings().stream()
                .filter(ceiling -> !ceiling.gear().reverse())
                .toList();
        Optional<Ceiling> highest = ceilings.stream()
                .max(Comparator.comparingDouble(ceiling -> ceiling.roadSpeed().value()));
        StartGears loaded = StartGears.of(truck, StartGears.Load.LOADED);
        return new CoachingCard(
                truck.id(),
                highest,
                ceilings,
                plan,
                drops(),
                StartGears.of(truck, StartGears.Load.EMPTY),
                loaded,
                speeds.cruisingBand(),
                points(highest));
    }

    private List<CoachingCard.Drop> drops() {
        Map<ShiftStep.Kind, List<Figure>> byKind = new EnumMap<>(ShiftStep.Kind.class);
        Steps steps = Steps.of(truck);
        Stream.concat(steps.inOrder().stream(), steps.byLever().stream())
                .distinct()
                .filter(this::underWay)
                .forEach(step -> byKind.computeIfAbsent(step.kind(), kind -> new ArrayList<>())
                        .add(step.drop(shiftSpeed(step))));
        Comparator<Figure> bySize = Comparator.comparingDouble(Figure::value);
        return byKind.entrySet().stream()
                .map(entry -> new CoachingCard.Drop(
                        entry.getKey(),
                        entry.getValue().stream().min(bySize).orElseThrow(),
                        entry.getValue().stream().max(bySize).orElseThrow()))
                .toList();
    }

    /** Not the step up from a deep reduction, which stalls the engine. */
    private boolean underWay(ShiftStep step) {
        return step.rpmAfter(truck.value(Parameter.GOVERNED_RPM)).value()
                >= truck.torque().points().firstKey();
    }

    /** As planned; a whole lever step, which the plan may not hold, waits until it too lands on its limit. */
    private double shiftSpeed(ShiftStep step) {
        double governed = truck.value(Parameter.GOVERNED_RPM);
        double planned = plan.leaves(step.from()).map(Figure::value).orElse(governed);
        double limit = new LuggingLimit(new RoadLoad(truck, plan.massKg(), plan.gradePercent()), plan.floor())
                .of(step.to())
                .value();
        return Math.min(governed, Math.max(planned, limit * step.step().value()));
    }

    private List<CoachingPoint> points(Optional<Ceiling> ceiling) {
        return Stream.of(Topic.values())
                .filter(this::applies)
                .map(topic -> new CoachingPoint(topic, figures(topic, ceiling)))
                .toList();
    }

    private boolean applies(Topic topic) {
        return switch (topic) {
            case PRESELECT_RANGE, LOW_RANGE_ONLY_UNDER_CEILING, START_IN_LOW_RANGE, MOVE_RANGE_ROLLING_BACK -> truck
                    .hasRange();
            case SELECT_SPLIT_THEN_BREAK_TORQUE, MOVE_SPLITTER_IN_NEUTRAL -> truck.splitter()
                    .isPresent();
            case SPLITTER_DIRECT_BEFORE_LOW_RANGE -> truck.hasRange()
                    && truck.splitter()
                            .filter(splitter -> !splitter.bothRanges())
                            .isPresent();
            case LET_LEVER_PAUSE_IN_NEUTRAL,
                    DOUBLE_CLUTCH,
                    SHIFT_PROGRESSIVELY,
                    CRUISE_BELOW_GOVERNED,
                    WARM_OIL_FIRST,
                    CLUTCH_BRAKE_WHILE_ROLLING,
                    COAST_IN_NEUTRAL,
                    ROLL_FAST_IN_LOW_GEAR_PEDAL_DOWN -> true;
        };
    }

    private Map<String, Figure> figures(Topic topic, Optional<Ceiling> ceiling) {
        Map<String, Figure> figures = new HashMap<>();
        switch (topic) {
            case LOW_RANGE_ONLY_UNDER_CEILING -> ceiling.ifPresent(highest -> {
                figures.put("ceiling", highest.roadSpeed());
                figures.put("example-speed", exampleSpeed(highest));
                figures.put(
                        "example-energy",
                        Figure.computed(EXAMPLE_EXCESS * EXAMPLE_EXCESS, Unit.RATIO, "(v / ceiling)^2"));
            });
            case SPLITTER_DIRECT_BEFORE_LOW_RANGE -> truck.splitter()
                    .filter(Splitter::overdrive)
                    .ifPresent(splitter -> figures.put("split-energy", splitEnergy(splitter)));
            case START_IN_LOW_RANGE -> figures.put(
                    "torque-in-high", Figure.computed(truck.rangeRatio(), Unit.RATIO, "R: range ratio"));
            case SHIFT_PROGRESSIVELY -> {
                plan.meanShiftSpeed().ifPresent(mean -> figures.put("mean-shift-speed", mean));
                plan.rangeEnergyShare()
                        .filter(share -> share.value() < WORTH_TELLING)
                        .ifPresent(share -> figures.put("range-energy-share", share));
            }
            case CRUISE_BELOW_GOVERNED -> figures.put(
                    "cruise-up-to", speeds.cruisingBand().ease());
            default -> {
                // The other points hold for every truck and need no figure.
            }
        }
        return figures;
    }

    private static Figure exampleSpeed(Ceiling ceiling) {
        return Figure.computed(EXAMPLE_EXCESS * ceiling.roadSpeed().value(), Unit.KILOMETRE_PER_HOUR, "1.25 x ceiling");
    }

    /** Slip energy of a shift from overdrive to low range over that from direct, at one engine speed before it. */
    private static Figure splitEnergy(Splitter splitter) {
        return Figure.computed(1 / (splitter.ratio() * splitter.ratio()), Unit.RATIO, "1 / s^2");
    }
}
