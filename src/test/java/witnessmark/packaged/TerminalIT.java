package witnessmark.packaged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The interactive shell in a real pseudo-terminal (tmux), with keys as a person presses them. */
class TerminalIT {
    private static final long PATIENCE_MILLIS = 60_000;

    @TempDir
    Path folder;

    private String session;

    @BeforeEach
    void open_the_shell() throws Exception {
        assumeTrue(run("tmux", "-V").startsWith("tmux"), "tmux is not installed");
        start();
    }

    /** Opens a shell in a session of its own. */
    private void start() throws Exception {
        session = "witnessmark-" + System.nanoTime();
        String[] command = {
            "tmux",
            "new-session",
            "-d",
            "-s",
            session,
            "-x",
            "80",
            "-y",
            "50",
            "env XDG_CONFIG_HOME=" + folder.resolve("config") + " target/dist/witnessmark --store "
                    + folder.resolve("store")
        };
        // A tmux server whose last session has just ended may still be on its way out.
        for (int tries = 0; tries < 10 && !run(command).isEmpty(); tries++) {
            Thread.sleep(300);
        }
        waitFor("witnessmark>");
    }

    @AfterEach
    void close() throws Exception {
        run("tmux", "kill-session", "-t", session);
        // The program closes its store after its terminal is gone; the folder is taken away when it has ended.
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (System.currentTimeMillis() < end
                && !run("pgrep", "-f", program()).isBlank()) {
            Thread.sleep(100);
        }
        run("pkill", "-9", "-f", program());
    }

    /** What the program of this test is found by among the processes. */
    private String program() {
        return "witnessmark\\.jar --store " + folder.resolve("store");
    }

    @Test
    void a_case_is_opened_filled_with_completion_and_judged() throws Exception {
        type("case new night --title 'Night shift'", "Enter");
        waitFor("Case night is open");
        type("case set ni", "Tab");
        waitFor("case set night");
        type("oil-level-l", "Tab");
        waitFor("oil-level-low=");
        type("ab", "Tab");
        waitFor("oil-level-low=absent");
        type("", "Enter");
        waitFor("Stored as entry 2");
        type("diagnose night", "Enter");
        waitFor("Decision support");
    }

    @Test
    void a_mistake_is_explained_and_the_prompt_comes_back() throws Exception {
        type("case shwo", "Enter");
        waitFor("did you mean: case show");
        type("half a line", "C-c");
        waitFor("Line dropped");
        type("quit", "Enter");
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (run("tmux", "has-session", "-t", session).isEmpty() && System.currentTimeMillis() < end) {
            Thread.sleep(200);
        }
        assertThat(run("tmux", "has-session", "-t", session)).isNotEmpty();
        assertThat(Files.readString(folder.resolve("config/witnessmark/history")))
                .contains("case shwo");
    }

    @Test
    void an_interview_whose_process_was_killed_goes_on_at_the_same_question() throws Exception {
        type("interview new --as torn", "Enter");
        for (String answer : List.of("Unit 7", "", "", "air", "", "", "", "", "grinds into low", "", "1", "")) {
            waitForPrompt();
            type(answer, "Enter");
        }
        waitFor(" 1. ");
        type("n", "Enter");
        waitFor("Kept: no, looked at and not so");
        waitFor(" 2. ");
        String asked = question(2);

        run("pkill", "-9", "-f", program());
        start();
        type("interview torn", "Enter");

        waitFor("Case torn goes on; 1 check answered so far");
        waitFor(" 2. ");
        assertThat(question(2)).isEqualTo(asked).isNotEmpty();
    }

    /** The first words of a question, as the screen shows it. */
    private String question(int number) throws Exception {
        return run("tmux", "capture-pane", "-t", session, "-p", "-S", "-500")
                .lines()
                .map(String::strip)
                .filter(line -> line.startsWith(number + ". "))
                .findFirst()
                .orElse("");
    }

    private static boolean isPrompt(String screen) {
        return screen.strip().endsWith(">") || screen.strip().endsWith(":");
    }

    private void waitForPrompt() throws Exception {
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        String before = "";
        String now = run("tmux", "capture-pane", "-t", session, "-p");
        while (System.currentTimeMillis() < end && (!isPrompt(now) || !now.equals(before))) {
            Thread.sleep(200);
            before = now;
            now = run("tmux", "capture-pane", "-t", session, "-p");
        }
        assertThat(isPrompt(now)).as(now).isTrue();
    }

    private void type(String text, String key) throws Exception {
        if (!text.isEmpty()) {
            run("tmux", "send-keys", "-t", session, "-l", text);
        }
        run("tmux", "send-keys", "-t", session, key);
    }

    private void waitFor(String text) throws Exception {
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        String screen = "";
        while (System.currentTimeMillis() < end) {
            screen = run("tmux", "capture-pane", "-t", session, "-p", "-S", "-500");
            if (screen.replaceAll("\\s+", " ").contains(text)) {
                return;
            }
            Thread.sleep(200);
        }
        assertThat(screen).contains(text);
    }

    private static String run(String... command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(new ArrayList<>(List.of(command)))
                    .redirectErrorStream(true)
                    .start();
            String out = new String(process.getInputStream().readAllBytes());
            process.waitFor(20, TimeUnit.SECONDS);
            return out;
        } catch (IOException e) {
            return "";
        }
    }
}
