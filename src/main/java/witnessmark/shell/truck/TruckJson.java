package witnessmark.shell.truck;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import witnessmark.document.page.CoachingTexts;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.ProfileFault;
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

/** Trucks and their tables as JSON. */
final class TruckJson {
    private TruckJson() {}

    static Map<String, Object> of(TruckProfile truck) {
        Map<String, Object> map = named(truck);
        map.put("mainRatios", truck.mainRatios());
        truck.splitter().ifPresent(splitter -> {
            map.put("splitterRatio", splitter.ratio());
            map.put("splits", splitter.bothRanges() ? "both" : "high-only");
        });
        truck.tyreSize().ifPresent(size -> map.put("tyreSize", size));
        map.put("gears", truck.gears().all().stream().map(TruckJson::of).toList());
        Map<String, Object> figures = new LinkedHashMap<>();
        truck.figures().forEach((parameter, figure) -> figures.put(parameter.key(), FigureJson.of(figure)));
        map.put("figures", figures);
        Map<String, Object> torque = new LinkedHashMap<>();
        truck.torque().points().forEach((rpm, newtonMetres) -> torque.put(String.valueOf(rpm), newtonMetres));
        map.put("torqueNmByRpm", torque);
        map.put("torqueBasis", truck.torque().basis().name().toLowerCase(Locale.ROOT));
        return map;
    }

    private static Map<String, Object> named(TruckProfile truck) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("truck", truck.id());
        map.put("title", truck.title());
        questions(map, truck);
        return map;
    }

    /** What is to be asked about the profile; nothing for an ordinary truck. */
    static void questions(Map<String, Object> map, TruckProfile truck) {
        if (!truck.questions().isEmpty()) {
            map.put(
                    "questions",
                    truck.questions().stream().map(ProfileFault::text).toList());
        }
    }

    private static Map<String, Object> of(Gear gear) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("gear", gear.id());
        map.put("title", gear.title());
        map.put("ratio", gear.ratio());
        map.put("range", gear.range().name().toLowerCase(Locale.ROOT));
        return map;
    }

    static Map<String, Object> speeds(TruckProfile truck, List<Double> rpms) {
        RoadSpeeds speeds = new RoadSpeeds(truck);
        Steps steps = Steps.of(truck);
        Map<String, Object> map = named(truck);
        map.put("rpm", rpms);
        map.put(
                "rows",
                speeds.table(rpms).stream()
                        .map(row -> {
                            Map<String, Object> line = of(row.gear());
                            line.put(
                                    "speeds",
                                    row.atEngineSpeeds().stream()
                                            .map(FigureJson::of)
                                            .toList());
                            return line;
                        })
                        .toList());
        map.put("lowRangeCeilings", ceilings(speeds.lowRangeCeilings()));
        map.put("steps", steps.inOrder().stream().map(TruckJson::of).toList());
        map.put("leverSteps", steps.byLever().stream().map(TruckJson::of).toList());
        steps.highRangeEvenness().ifPresent(even -> {
            map.put(
                    "highRangeSteps",
                    even.verdict().name().toLowerCase(Locale.ROOT).replace('_', '-'));
            map.put("highRangeLeastDrop", even.least());
            map.put("highRangeMostDrop", even.most());
        });
        map.put("cruising", of(speeds.cruisingBand()));
        return map;
    }

    private static List<Map<String, Object>> ceilings(List<RoadSpeeds.Ceiling> ceilings) {
        return ceilings.stream()
                .map(ceiling -> {
                    Map<String, Object> map = new LinkedHashMap<>();
                    map.put("gear", ceiling.gear().id());
                    map.put("roadSpeed", FigureJson.of(ceiling.roadSpeed()));
                    return map;
                })
                .toList();
    }

    private static Map<String, Object> of(RoadSpeeds.CruisingBand band) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("gear", band.gear().id());
        map.put("from", FigureJson.of(band.from()));
        map.put("ease", FigureJson.of(band.ease()));
        map.put("most", FigureJson.of(band.most()));
        return map;
    }

    private static Map<String, Object> of(ShiftStep step) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("from", step.from().id());
        map.put("to", step.to().id());
        map.put("moves", SpeedsText.moves(step));
        map.put("step", step.step().value());
        map.put("dropShare", step.dropShare());
        return map;
    }

    static Map<String, Object> plan(TruckProfile truck, ShiftPlan plan) {
        Map<String, Object> map = named(truck);
        map.put("massKg", plan.massKg());
        map.put("gradePercent", plan.gradePercent());
        Unusual.put(map, ShiftPlanText.unusual(truck, plan));
        map.put("shifts", plan.shifts().stream().map(TruckJson::of).toList());
        startAgain(map, plan);
        map.put("highestGearPulled", plan.highest().map(Gear::id).orElse(null));
        plan.end().ifPresent(end -> {
            Map<String, Object> not = new LinkedHashMap<>();
            not.put("gear", end.gear().id());
            not.put("engineSpeed", FigureJson.of(end.engineSpeed()));
            not.put("needed", FigureJson.of(end.needed()));
            not.put("torque", FigureJson.of(end.torque()));
            map.put("notPulled", not);
        });
        map.put("lostPerSecond", FigureJson.of(plan.lostPerSecond()));
        plan.meanShiftSpeed().ifPresent(mean -> map.put("meanShiftSpeed", FigureJson.of(mean)));
        plan.rangeEnergyShare().ifPresent(share -> map.put("rangeEnergyShare", FigureJson.of(share)));
        return map;
    }

    /** The gears that are started in and not shifted into; nothing for a box without a crawler. */
    private static void startAgain(Map<String, Object> map, ShiftPlan plan) {
        if (!plan.gaps().isEmpty()) {
            map.put(
                    "startAgainIn",
                    plan.gaps().stream().map(gap -> gap.to().id()).toList());
        }
    }

    private static Map<String, Object> of(PlannedShift shift) {
        Map<String, Object> map = of(shift.step());
        map.put("shiftAt", FigureJson.of(shift.shiftAt()));
        map.put("roadSpeed", FigureJson.of(shift.roadSpeed()));
        map.put("rpmAfter", FigureJson.of(shift.rpmAfter()));
        map.put("limit", FigureJson.of(shift.luggingLimit()));
        map.put("belowLimit", shift.belowLimit());
        map.put("governedRoadSpeed", FigureJson.of(shift.governed().roadSpeed()));
        map.put("governedRpmAfter", FigureJson.of(shift.governed().rpmAfter()));
        return map;
    }

    static Map<String, Object> card(TruckProfile truck, CoachingCard card, CoachingTexts words) {
        Map<String, Object> map = named(truck);
        card.lowRangeCeiling().ifPresent(ceiling -> map.put("lowRangeCeiling", FigureJson.of(ceiling.roadSpeed())));
        map.put("ceilings", ceilings(card.ceilings()));
        map.put("shifts", card.plan().shifts().stream().map(TruckJson::of).toList());
        startAgain(map, card.plan());
        map.put("drops", card.drops().stream().map(words::drop).toList());
        map.put("startLoaded", of(card.loaded()));
        map.put("startEmpty", of(card.empty()));
        map.put("cruising", of(card.cruising()));
        map.put("points", card.points().stream().map(point -> of(point, words)).toList());
        return map;
    }

    private static Map<String, Object> of(StartGears gears) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("lowest", gears.lowest().map(Gear::id).orElse(null));
        map.put("highest", gears.highest().map(Gear::id).orElse(null));
        return map;
    }

    private static Map<String, Object> of(CoachingPoint point, CoachingTexts words) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("topic", point.topic().key());
        map.put("do", point.topic().toDo());
        map.put("text", words.text(point));
        map.put("why", words.reason(point));
        return map;
    }
}
