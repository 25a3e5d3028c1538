package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.language.Language;

/** Whose it is where that turns on what is known not to be, or on two facts together. Outcomes: common practice, no source. */
class OwnerOfSeveralFactsTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private static final String MISTIMED = "timing-marks-off, one-countershaft-loaded, knock-once-per-turn,"
            + " magnet-tooth-piece, no countershaft-gear-shifted, repaired-lately";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            # a shop is not named for what is known not to have begun with its work, a builder early in the unit's life is
            timing-marks-off, one-countershaft-loaded, knock-once-per-turn, no countershaft-gear-shifted, repaired-lately, fault-since-repair    | assembly
            timing-marks-off, one-countershaft-loaded, knock-once-per-turn, no countershaft-gear-shifted, repaired-lately, no fault-since-repair | open
            timing-marks-off, one-countershaft-loaded, knock-once-per-turn, no countershaft-gear-shifted, repaired-lately, no fault-since-repair, early-life | assembly
            seal-lip-cut, oil-leak-traces, output-seal-leaks, no several-seals-wet, no breather-plugged, repaired-lately, leak-since-repair | assembly
            seal-lip-cut, oil-leak-traces, output-seal-leaks, no several-seals-wet, no breather-plugged, no high-mileage, no fault-since-repair, repaired-lately, no leak-since-repair | open
            # what comes loose later may be of an older repair
            range-bar-nut-loose, range-lost-at-once, range-will-not-shift, no piston-nut-locked-right, repaired-lately, no fault-since-repair | assembly
            # paint in a port is somebody's work, mud is not, whenever it was found
            exhaust-port-plugged, cured-with-exhaust-open, range-slow-into-low, no regulator-outlet-low, repaired-lately, fault-since-repair, exhaust-port-under-paint | assembly
            exhaust-port-plugged, cured-with-exhaust-open, range-slow-into-low, no regulator-outlet-low, repaired-lately, fault-since-repair, no exhaust-port-under-paint | maintenance
            breather-plugged, leaks-stop-breather-cleared, several-seals-wet, repaired-lately, leak-since-repair, breather-shut-by-work | assembly
            breather-plugged, leaks-stop-breather-cleared, several-seals-wet, repaired-lately, leak-since-repair, breather-packed-with-mud | maintenance
            breather-plugged, leaks-stop-breather-cleared, several-seals-wet, early-life, no breather-shut-by-work | maintenance
            # marks of a tow beside a vibration that did not begin with it, or another operator's tow
            driveline-balance-off, vibration-by-road-speed, vibration-once-per-turn, driveline-struck-in-tow, vibration-since-tow, no angles-out | towing-transport
            driveline-balance-off, vibration-by-road-speed, vibration-once-per-turn, driveline-struck-in-tow, no vibration-since-tow, no angles-out | outside-gearbox
            driveline-balance-off, vibration-by-road-speed, vibration-once-per-turn, driveline-struck-in-tow, vibration-since-tow, no angles-out, towed-by-another-too | open
            # ordered so, supplied so, and hands before
            wrong-washer-stack, mainshaft-endplay-out, slips-out-under-pull, slips-out-on-coast, washer-faces-worn-even, repaired-lately, fault-since-repair, no front-snap-ring-out | assembly
            wrong-washer-stack, mainshaft-endplay-out, slips-out-under-pull, slips-out-on-coast, washer-faces-worn-even, repaired-lately, fault-since-repair, no front-snap-ring-out, work-ordered-so | open
            wrong-washer-stack, mainshaft-endplay-out, slips-out-under-pull, slips-out-on-coast, washer-faces-worn-even, repaired-lately, fault-since-repair, no front-snap-ring-out, wrong-part-as-supplied | open
            rust-inside, stored-long, lever-stiff-engine-off, noise-neutral-pedal-up, no oil-sodium-or-glycol, no cooler-fails-pressure-test, no fault-since-repair | maintenance
            rust-inside, stored-long, lever-stiff-engine-off, noise-neutral-pedal-up, no oil-sodium-or-glycol, no cooler-fails-pressure-test, repaired-lately, fault-since-repair | open
            rust-inside, stored-long, lever-stiff-engine-off, noise-neutral-pedal-up, no oil-sodium-or-glycol, no cooler-fails-pressure-test, no fault-since-repair, neglect-before-purchase | open
            flutes-with-craters, arc-spots-on-races, welding-on-truck, welded-by-repair-shop, noise-neutral-pedal-up, no welded-by-body-builder | assembly
            flutes-with-craters, arc-spots-on-races, welding-on-truck, welded-by-repair-shop, noise-neutral-pedal-up, no welded-by-body-builder, hum-before-welding | open
            # deep water counts once it is told; nobody has to be asked for it
            facing-bond-failed, facing-flung-heat-free, fault-sudden, loss-of-drive, early-life, same-delivery-alike, batch-marks-part-failed-from-sound, no flywheel-heat-checked, no clutch-facing-oily, no stored-long, no high-mileage, no disc-wrong-or-reversed, no flywheel-cut-wrong | part-defect
            facing-bond-failed, facing-flung-heat-free, fault-sudden, loss-of-drive, early-life, no flywheel-heat-checked, no clutch-facing-oily, no stored-long, no high-mileage, no disc-wrong-or-reversed, no flywheel-cut-wrong, water-crossing-or-washing | outside-gearbox
            """)
    void whose_it_is(String entered, String owner) {
        Verdict verdict = DIAGNOSIS.judge(ShortCase.of("whose", entered)).verdict();

        assertThat(verdict.isDetermined() ? verdict.classId() : "open")
                .as(entered)
                .isEqualTo(owner);
    }

    @Test
    void what_is_made_of_others_is_shown_with_what_it_was_taken_from() {
        for (Language language : Language.values()) {
            Judgement judgement = new Diagnosis(
                            RuleBase.shipped(), ShippedKnowledge.load().in(language))
                    .judge(ShortCase.of("whose", MISTIMED + ", no fault-since-repair"));

            assertThat(judgement.verdict().open().toString())
                    .contains(
                            language == Language.SPANISH
                                    ? "queda abierto de quién fue: \"Reparación reciente, y la falla no empezó con ella\""
                                    : "whose doing it was is open: \"Repaired lately, and the fault did not begin with it\"");
        }
    }
}
