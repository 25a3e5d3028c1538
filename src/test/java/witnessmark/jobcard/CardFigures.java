package witnessmark.jobcard;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Layout;

/** How a folder of job-card sentences was read: what was said and found, and what was proposed wrongly. */
record CardFigures(
        int sentences,
        int said,
        int found,
        int proposed,
        int right,
        int sure,
        int wrongState,
        List<String> sureWrong,
        List<String> misses) {

    static CardFigures of(ReadJobCard reader, Path file) throws IOException {
        int sentences = 0;
        int said = 0;
        int found = 0;
        int proposed = 0;
        int right = 0;
        int sure = 0;
        int wrongState = 0;
        List<String> sureWrong = new ArrayList<>();
        List<String> misses = new ArrayList<>();
        for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
            if (line.startsWith("#") || line.isBlank()) {
                continue;
            }
            String[] parts = line.split(" => ");
            Set<String> expected = new HashSet<>(List.of(parts[1].strip().split(" ")));
            expected.remove("nothing");
            Set<String> got = new HashSet<>();
            for (Proposal p : reader.read(parts[0], Layout.unknown()).proposals()) {
                if (p.sureness() != Sureness.DOUBTFUL) {
                    got.add(written(p));
                }
                if (p.sureness() == Sureness.SURE) {
                    sure++;
                    if (!expected.contains(written(p))) {
                        sureWrong.add(parts[0] + " | " + written(p));
                    }
                }
            }
            sentences++;
            said += expected.size();
            proposed += got.size();
            Set<String> both = new HashSet<>(expected);
            both.retainAll(got);
            found += both.size();
            right += both.size();
            wrongState += (int)
                    got.stream().filter(g -> expected.contains(opposite(g))).count();
            if (!got.equals(expected)) {
                misses.add(parts[0] + " | " + expected + " | " + got);
            }
        }
        return new CardFigures(sentences, said, found, proposed, right, sure, wrongState, sureWrong, misses);
    }

    private static String written(Proposal proposal) {
        if (proposal instanceof Proposal.OfMeasure m) {
            String value = m.value() == Math.rint(m.value()) ? String.valueOf((long) m.value()) : "" + m.value();
            return m.id() + "=" + value;
        }
        if (proposal instanceof Proposal.OfOdometer o) {
            return "odometer=" + (long) o.value();
        }
        Proposal.OfFinding f = (Proposal.OfFinding) proposal;
        return (f.state() == FindingState.PRESENT ? "+" : f.state() == FindingState.ABSENT ? "-" : "?") + f.id();
    }

    private static String opposite(String written) {
        return (written.startsWith("+") ? "-" : "+") + written.substring(1);
    }

    /** Share of the sentences' content that was proposed. */
    double foundShare() {
        return (double) found / said;
    }

    /** Share of the proposals, sure or likely, that are right. */
    double rightShare() {
        return (double) right / proposed;
    }

    String figures() {
        return sentences + " sentences, " + found + " of " + said + " found, " + right + " of " + proposed
                + " proposals right, wrong state " + wrongState + ", of " + sure + " sure wrong " + sureWrong;
    }
}
