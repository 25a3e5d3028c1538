package witnessmark.document;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.springframework.util.FileSystemUtils;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** A browser without a window, led by its DevTools protocol (chromedevtools.github.io/devtools-protocol). */
final class Browser implements AutoCloseable {
    private static final long SECONDS = 120;
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Process process;
    private final Path folder;
    private final WebSocket socket;
    private final BlockingQueue<JsonNode> said = new LinkedBlockingQueue<>();
    private int calls;

    private Browser(Process process, Path folder, int port) throws Exception {
        this.process = process;
        this.folder = folder;
        HttpClient http = HttpClient.newHttpClient();
        HttpRequest pages = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/json/list"))
                .build();
        JsonNode list = JSON.readTree(
                http.send(pages, HttpResponse.BodyHandlers.ofString()).body());
        String page = Stream.iterate(0, n -> n < list.size(), n -> n + 1)
                .map(list::get)
                .filter(p -> p.get("type").asString().equals("page"))
                .map(p -> p.get("webSocketDebuggerUrl").asString())
                .findFirst()
                .orElseThrow();
        this.socket = http.newWebSocketBuilder()
                .buildAsync(URI.create(page), new Listening())
                .get(SECONDS, TimeUnit.SECONDS);
        call("Page.enable", Map.of());
    }

    /** The program of the browser; empty where none is installed. */
    static Optional<Path> installed() {
        return Stream.of(System.getenv().getOrDefault("PATH", "").split(":"))
                .flatMap(folder -> Stream.of("chromium", "chromium-browser").map(name -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    static Browser start(Path program) throws Exception {
        Path folder = Files.createTempDirectory("browser-");
        Process process = new ProcessBuilder(
                        program.toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--no-first-run",
                        "--remote-debugging-port=0",
                        "--user-data-dir=" + folder,
                        "about:blank")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        Path port = folder.resolve("DevToolsActivePort");
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
        while (!Files.exists(port) || Files.readAllLines(port).isEmpty()) {
            if (!process.isAlive() || System.nanoTime() > end) {
                process.destroyForcibly();
                throw new IOException("the browser did not start");
            }
            Thread.sleep(100);
        }
        return new Browser(
                process, folder, Integer.parseInt(Files.readAllLines(port).get(0)));
    }

    /** Opens a file in a window of the width, CSS pixels. */
    void open(Path file, int width) throws Exception {
        call(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", 800, "deviceScaleFactor", 1, "mobile", width < 600));
        call("Page.navigate", Map.of("url", file.toUri().toString()));
        while (!next().path("method").asString().equals("Page.loadEventFired")) {
            // What else the browser tells is not needed.
        }
    }

    /** The lines of text that the script comes to. */
    List<String> lines(String script) throws Exception {
        JsonNode answer = call("Runtime.evaluate", Map.of("expression", script, "returnByValue", true));
        JsonNode value = answer.path("result").path("result").path("value");
        if (!value.isString()) {
            throw new IOException("the script failed: " + answer);
        }
        return value.asString().lines().toList();
    }

    private JsonNode call(String method, Map<String, ?> parameters) throws Exception {
        int id = ++calls;
        String text = JSON.writeValueAsString(Map.of("id", id, "method", method, "params", parameters));
        socket.sendText(text, true).get(SECONDS, TimeUnit.SECONDS);
        JsonNode answer = next();
        while (answer.path("id").asInt(0) != id) {
            answer = next();
        }
        return answer;
    }

    private JsonNode next() throws Exception {
        JsonNode next = said.poll(SECONDS, TimeUnit.SECONDS);
        if (next == null) {
            throw new IOException("the browser does not answer");
        }
        return next;
    }

    @Override
    public void close() throws Exception {
        socket.abort();
        process.destroy();
        if (!process.waitFor(20, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
        }
        for (int again = 0; again < 20 && Files.exists(folder); again++) {
            deleted(folder);
        }
    }

    /** Helpers of the browser may write a little longer than itself. */
    private static void deleted(Path folder) throws InterruptedException {
        try {
            FileSystemUtils.deleteRecursively(folder);
        } catch (IOException e) {
            Thread.sleep(200);
        }
    }

    /** Puts messages together that come in pieces. */
    private final class Listening implements WebSocket.Listener {
        private final StringBuilder pieces = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence piece, boolean last) {
            pieces.append(piece);
            if (last) {
                said.add(JSON.readTree(pieces.toString()));
                pieces.setLength(0);
            }
            from.request(1);
            return null;
        }
    }
}
