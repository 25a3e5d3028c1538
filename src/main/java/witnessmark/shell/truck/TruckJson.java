package witnessmark.shell.truck;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.document.page.CoachingTexts;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.ProfileFault;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.plan.CoachingCard;
import witnessmark.gearbox.plan.CoachingPoint;
import witnessmark.gearbox.plan.PlannedShift;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.gearbox.speed.RoadSpeeds;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.Steps;
import witnessmark.gearbox.start.StartGears;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.Json;

/** Trucks and their tables as JSON. */
final class TruckJson {
    private TruckJson() {}

    /** @param questions what is to be asked about the profile; none for an ordinary truck */
    record Named(String truck, String title, Optional<List<String>> questions) {
        static Named of(TruckProfile truck) {
            return new Named(truck.id(), truck.title(), TruckJson.questions(truck));
        }
    }

    /** What is to be asked about the profile; empty for an ordinary truck. */
    static Optional<List<String>> questions(TruckProfile truck) {
        return Json.some(truck.questions().stream().map(ProfileFault::text).toList());
    }

    record Profile(
            @Json.Inlined Named truck,
            List<Double> mainRatios,
            Optional<Double> splitterRatio,
            Optional<String> splits,
            Optional<String> tyreSize,
            List<GearForm> gears,
            Map<String, FigureJson> figures,
            Map<String, Double> torqueNmByRpm,
            Basis torqueBasis) {
        static Profile of(TruckProfile truck) {
            Map<String, FigureJson> figures = new LinkedHashMap<>();
            truck.figures().forEach((parameter, figure) -> figures.put(parameter.key(), FigureJson.of(figure)));
            Map<String, Double> torque = new LinkedHashMap<>();
            truck.torque().points().forEach((rpm, newtonMetres) -> torque.put(String.valueOf(rpm), newtonMetres));
            return new Profile(
                    Named.of(truck),
                    truck.mainRatios(),
                    truck.splitter().map(splitter -> splitter.ratio()),
                    truck.splitter().map(splitter -> splitter.bothRanges() ? "both" : "high-only"),
                    truck.tyreSize(),
                    truck.gears().all().stream().map(GearForm::of).toList(),
                    figures,
                    torque,
                    truck.torque().basis());
        }
    }

    record GearForm(String gear, String title, double ratio, Range range) {
        static GearForm of(Gear gear) {
            return new GearForm(gear.id(), gear.title(), gear.ratio(), gear.range());
        }
    }

    record Speeds(
            @Json.Inlined Named truck,
            List<Double> rpm,
            List<Row> rows,
            List<Ceiling> lowRangeCeilings,
            List<Step> steps,
            List<Step> leverSteps,
            @Json.Inlined Optional<Evenness> evenness,
            Cruising cruising) {
        static Speeds of(TruckProfile truck, List<Double> rpms) {
            RoadSpeeds speeds = new RoadSpeeds(truck);
            Steps steps = Steps.of(truck);
            return new Speeds(
                    Named.of(truck),
                    rpms,
                    speeds.table(rpms).stream()
                            .map(row -> new Row(
                                    GearForm.of(row.gear()),
                                    row.atEngineSpeeds().stream()
                                            .map(FigureJson::of)
                                            .toList()))
                            .toList(),
                    ceilings(speeds.lowRangeCeilings()),
                    steps.inOrder().stream().map(Step::of).toList(),
                    steps.byLever().stream().map(Step::of).toList(),
                    steps.highRangeEvenness().map(even -> new Evenness(even.verdict(), even.least(), even.most())),
                    Cruising.of(speeds.cruisingBand()));
        }
    }

    record Row(@Json.Inlined GearForm gear, List<FigureJson> speeds) {}

    record Evenness(Steps.Evenness.Verdict highRangeSteps, double highRangeLeastDrop, double highRangeMostDrop) {}

    record Ceiling(String gear, FigureJson roadSpeed) {}

    private static List<Ceiling> ceilings(List<RoadSpeeds.Ceiling> ceilings) {
        return ceilings.stream()
                .map(ceiling -> new Ceiling(ceiling.gear().id(), FigureJson.of(ceiling.roadSpeed())))
                .toList();
    }

    record Cruising(String gear, FigureJson from, FigureJson ease, FigureJson most) {
        static Cruising of(RoadSpeeds.CruisingBand band) {
            return new Cruising(
                    band.gear().id(),
                    FigureJson.of(band.from()),
                    FigureJson.of(band.ease()),
                    FigureJson.of(band.most()));
        }
    }

    record Step(String from, String to, String moves, double step, double dropShare) {
        static Step of(ShiftStep step) {
            return new Step(
                    step.from().id(),
                    step.to().id(),
                    SpeedsText.moves(step),
                    step.step().value(),
                    step.dropShare());
        }
    }

    record Plan(
            @Json.Inlined Named truck,
            double massKg,
            double gradePercent,
            Optional<List<String>> unusual,
            List<Shift> shifts,
            Optional<List<String>> startAgainIn,
            @Nullable String highestGearPulled,
            Optional<NotPulled> notPulled,
            FigureJson lostPerSecond,
            Optional<FigureJson> meanShiftSpeed,
            Optional<FigureJson> rangeEnergyShare) {
        static Plan of(TruckProfile truck, ShiftPlan plan) {
            return new Plan(
                    Named.of(truck),
                    plan.massKg(),
                    plan.gradePercent(),
                    Json.some(ShiftPlanText.unusual(truck, plan)),
                    plan.shifts().stream().map(Shift::of).toList(),
                    startAgain(plan),
                    plan.highest().map(Gear::id).orElse(null),
                    plan.end()
                            .map(end -> new NotPulled(
                                    end.gear().id(),
                                    FigureJson.of(end.engineSpeed()),
                                    FigureJson.of(end.needed()),
                                    FigureJson.of(end.torque()))),
                    FigureJson.of(plan.lostPerSecond()),
                    plan.meanShiftSpeed().map(FigureJson::of),
                    plan.rangeEnergyShare().map(FigureJson::of));
        }
    }

    record NotPulled(String gear, FigureJson engineSpeed, FigureJson needed, FigureJson torque) {}

    /** The gears that are started in and not shifted into; empty for a box without a crawler. */
    private static Optional<List<String>> startAgain(ShiftPlan plan) {
        return Json.some(plan.gaps().stream().map(gap -> gap.to().id()).toList());
    }

    record Shift(
            @Json.Inlined Step step,
            FigureJson shiftAt,
            FigureJson roadSpeed,
            FigureJson rpmAfter,
            FigureJson limit,
            boolean belowLimit,
            FigureJson governedRoadSpeed,
            FigureJson governedRpmAfter) {
        static Shift of(PlannedShift shift) {
            return new Shift(
                    Step.of(shift.step()),
                    FigureJson.of(shift.shiftAt()),
                    FigureJson.of(shift.roadSpeed()),
                    FigureJson.of(shift.rpmAfter()),
                    FigureJson.of(shift.luggingLimit()),
                    shift.belowLimit(),
                    FigureJson.of(shift.governed().roadSpeed()),
                    FigureJson.of(shift.governed().rpmAfter()));
        }
    }

    record Card(
            @Json.Inlined Named truck,
            Optional<FigureJson> lowRangeCeiling,
            List<Ceiling> ceilings,
            List<Shift> shifts,
            Optional<List<String>> startAgainIn,
            List<String> drops,
            Starts startLoaded,
            Starts startEmpty,
            Cruising cruising,
            List<Point> points) {
        static Card of(TruckProfile truck, CoachingCard card, CoachingTexts words) {
            return new Card(
                    Named.of(truck),
                    card.lowRangeCeiling().map(ceiling -> FigureJson.of(ceiling.roadSpeed())),
                    TruckJson.ceilings(card.ceilings()),
                    card.plan().shifts().stream().map(Shift::of).toList(),
                    startAgain(card.plan()),
                    card.drops().stream().map(words::drop).toList(),
                    Starts.of(card.loaded()),
                    Starts.of(card.empty()),
                    Cruising.of(card.cruising()),
                    card.points().stream().map(point -> Point.of(point, words)).toList());
        }
    }

    record Starts(@Nullable String lowest, @Nullable String highest) {
        static Starts of(StartGears gears) {
            return new Starts(
                    gears.lowest().map(Gear::id).orElse(null),
                    gears.highest().map(Gear::id).orElse(null));
        }
    }

    record Point(String topic, @Json.Name("do") boolean toDo, String text, String why) {
        static Point of(CoachingPoint point, CoachingTexts words) {
            return new Point(point.topic().key(), point.topic().toDo(), words.text(point), words.reason(point));
        }
    }
}
