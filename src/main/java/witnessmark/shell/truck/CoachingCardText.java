package witnessmark.shell.truck;

import java.util.List;
import witnessmark.document.page.CoachingTexts;
import witnessmark.gearbox.plan.CoachingCard;
import witnessmark.gearbox.plan.CoachingPoint;
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

    /** @param title what the truck is called in the language of the card */
    void print(String title, CoachingCard card) {
        page.line(words.say("title") + ": " + title);
        card.lowRangeCeiling().ifPresent(ceiling -> {
            page.blank();
            page.strong(words.say("ceiling") + " " + ceiling.limit());
            card.ceilings().forEach(each -> page.indented("   ", "   ", each.line()));
        });
        if (!card.plan().shifts().isEmpty()) {
            page.heading(words.say("shifts"));
            page.indented("  ", "  ", card.shiftsOnDial());
        }
        card.plan().gaps().forEach(gap -> page.item(words.startAgain(gap)));
        card.plan()
                .end()
                .ifPresent(end -> page.item(words.say("plan-ends")
                        .replace("{gear}", end.notReached().id())));
        card.drops().forEach(drop -> page.item(words.drop(drop)));
        page.heading(words.say("starts"));
        page.item(words.say("loaded") + ": " + starts(card.loaded()));
        page.item(words.say("empty") + ": " + starts(card.empty()));
        page.item(words.say("cruise") + ": " + card.cruise());
        points(
                words.say("do"),
                card.points().stream().filter(point -> point.topic().toDo()).toList());
        points(
                words.say("do-not"),
                card.points().stream().filter(point -> !point.topic().toDo()).toList());
        page.blank().indented("", "", words.say("caution"));
        page.flush();
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
