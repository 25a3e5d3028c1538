package witnessmark.shell.truck;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import witnessmark.document.page.CoachingTexts;
import witnessmark.gearbox.plan.CoachingCard;
import witnessmark.gearbox.plan.CoachingPoint;
import witnessmark.gearbox.plan.PlannedShift;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.gearbox.start.StartGears;
import witnessmark.shell.print.Page;

/** The coaching card on one page. */
final class CoachingCardText {
    private final Page page;
    private final CoachingTexts words;

    CoachingCardText(Page page, CoachingTexts words) {
        this.page = page;
        this.words = words;
    }

    void print(CoachingCard card) {
        page.line(words.say("title") + ": " + card.title());
        card.lowRangeCeiling().ifPresent(ceiling -> {
            page.blank();
            page.strong(words.say("ceiling") + " " + SpeedUnits.BOTH.limit(ceiling.roadSpeed()));
            page.indented(
                    "   ",
                    "   ",
                    card.ceilings().stream()
                            .map(each -> each.gear().id() + ": " + SpeedUnits.BOTH.limit(each.roadSpeed()))
                            .collect(Collectors.joining(", ")));
        });
        page.heading(words.say("shifts"));
        page.indented("  ", "  ", shifts(card.plan().shifts()));
        card.drops().forEach(drop -> page.item(words.drop(drop)));
        page.heading(words.say("starts"));
        page.item(words.say("loaded") + ": " + starts(card.loaded()));
        page.item(words.say("empty") + ": " + starts(card.empty()));
        page.item(words.say("cruise") + ": "
                + SpeedUnits.BOTH.whole(card.cruising().from()) + " - "
                + SpeedUnits.BOTH.whole(card.cruising().ease()));
        points(
                words.say("do"),
                card.points().stream().filter(point -> point.topic().toDo()).toList());
        points(
                words.say("do-not"),
                card.points().stream().filter(point -> !point.topic().toDo()).toList());
        page.blank().indented("", "", words.say("caution"));
        page.flush();
    }

    private static String shifts(List<PlannedShift> shifts) {
        return shifts.stream()
                .map(shift -> String.format(
                        Locale.ROOT,
                        "%s-%s %.0f",
                        shift.step().from().id(),
                        shift.step().to().id(),
                        Math.rint(shift.shiftAt().value() / 50) * 50))
                .collect(Collectors.joining(", "));
    }

    private String starts(StartGears gears) {
        return gears.lowest()
                .flatMap(lowest -> gears.highest().map(highest -> words.startGears(lowest.id(), highest.id())))
                .orElse(words.say("no-start"));
    }

    private void points(String heading, List<CoachingPoint> points) {
        page.heading(heading);
        points.forEach(point -> page.item(words.text(point) + " " + words.reason(point)));
    }
}
