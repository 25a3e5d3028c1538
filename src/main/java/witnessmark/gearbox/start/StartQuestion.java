package witnessmark.gearbox.start;

import witnessmark.gearbox.Gear;
import witnessmark.gearbox.QuestionRefused;

/**
 * A start from rest.
 *
 * @param massKg truck and trailer
 * @param gradePercent rise over run; negative downhill
 */
public record StartQuestion(Gear gear, double massKg, double gradePercent) {

    public StartQuestion {
        if (!(massKg >= 500 && massKg <= 400_000)) {
            throw new QuestionRefused("mass: " + massKg + " kg cannot be", "give 500 to 400000 kg");
        }
        if (!(gradePercent >= -40 && gradePercent <= 40)) {
            throw new QuestionRefused("grade: " + gradePercent + " % cannot be", "give -40 to 40, uphill positive");
        }
    }
}
