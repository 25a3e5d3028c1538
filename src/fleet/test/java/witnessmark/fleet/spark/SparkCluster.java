package witnessmark.fleet.spark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A master and workers of Spark's own cluster on this machine, from the jars of the class path alone. */
final class SparkCluster implements AutoCloseable {
    private static final String HOST = "127.0.0.1";

    /** Tables so small are made sooner without compiling their queries. */
    private static final List<String> SETTINGS = List.of(
            "spark.driver.host=" + HOST,
            "spark.driver.bindAddress=" + HOST,
            "spark.executor.memory=512m",
            "spark.ui.enabled=false",
            "spark.sql.shuffle.partitions=2",
            "spark.sql.codegen.wholeStage=false",
            "spark.sql.codegen.factoryMode=NO_CODEGEN",
            "spark.sql.adaptive.enabled=false");

    private final Path folder;
    private final Path home;
    private final int port = freePort();
    private final int pages = freePort();
    private final List<Process> workers = new ArrayList<>();
    private final List<Integer> workerPorts = new ArrayList<>();
    private final Process master;

    /** @param count workers of one core each */
    SparkCluster(Path folder, int count) throws IOException, InterruptedException {
        this.folder = Files.createDirectories(folder);
        this.home = home(folder.resolve("home"));
        master = started(
                "master",
                "org.apache.spark.deploy.master.Master",
                List.of("--host", HOST, "--port", "" + port, "--webui-port", "" + pages));
        for (int i = 0; i < count; i++) {
            workerPorts.add(freePort());
            workers.add(started(
                    "worker-" + i,
                    "org.apache.spark.deploy.worker.Worker",
                    List.of(
                            "--host",
                            HOST,
                            "--port",
                            "" + workerPorts.get(i),
                            "--cores",
                            "1",
                            "--memory",
                            "1g",
                            "--webui-port",
                            "" + freePort(),
                            "-d",
                            folder.resolve("work-" + i).toString(),
                            url())));
        }
        awaitWorkers(count);
    }

    private static Path home(Path home) throws IOException {
        Path jars = Files.createDirectories(home.resolve("jars"));
        Files.createFile(home.resolve("RELEASE"));
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            Path jar = Path.of(entry);
            boolean ofSpark =
                    entry.endsWith(".jar") && !jar.getFileName().toString().startsWith("witnessmark");
            if (ofSpark && !Files.exists(jars.resolve(jar.getFileName()))) {
                Files.createSymbolicLink(jars.resolve(jar.getFileName()), jar);
            }
        }
        return home;
    }

    String url() {
        return "spark://" + HOST + ":" + port;
    }

    /** How the master names a worker: host and port. */
    String worker(int number) {
        return HOST + ":" + workerPorts.get(number);
    }

    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Process started(String name, String main, List<String> more) throws IOException {
        List<String> words = new ArrayList<>();
        words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        words.addAll(Arrays.asList(System.getProperty("fleet.opened").split(" ")));
        words.addAll(
                List.of("-Xmx512m", "-Dspark.master.rest.enabled=false", "-cp", home.resolve("jars") + "/*", main));
        words.addAll(more);
        ProcessBuilder process = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve(name + ".txt").toFile());
        process.environment().put("SPARK_HOME", home.toString());
        process.environment().put("SPARK_SCALA_VERSION", "2.13");
        process.environment().put("SPARK_LOCAL_IP", HOST);
        return process.start();
    }

    private void awaitWorkers(int count) throws IOException, InterruptedException {
        HttpClient http = HttpClient.newHttpClient();
        HttpRequest ask = HttpRequest.newBuilder(URI.create("http://" + HOST + ":" + pages + "/json/"))
                .build();
        for (int tries = 0; tries < 3000; tries++) {
            try {
                String said =
                        http.send(ask, HttpResponse.BodyHandlers.ofString()).body();
                if (said.replaceAll("\\s", "").contains("\"aliveworkers\":" + count)) {
                    return;
                }
            } catch (IOException e) {
                assertThat(master.isAlive())
                        .as(Files.readString(folder.resolve("master.txt")))
                        .isTrue();
            }
            Thread.sleep(100);
        }
        throw new AssertionError("the workers did not come up within five minutes; see " + folder);
    }

    /** Hands a job in, as spark-submit does; what it says goes to the file of its name. */
    Process submit(String name, List<String> options) throws IOException {
        List<String> words = new ArrayList<>(List.of("--master", url()));
        SETTINGS.forEach(setting -> words.addAll(List.of("--conf", setting)));
        words.addAll(List.of("--class", ReadFleet.class.getName(), System.getProperty("fleet.jar")));
        words.addAll(options);
        return started(name, "org.apache.spark.deploy.SparkSubmit", words);
    }

    String said(String name) throws IOException {
        return Files.readString(folder.resolve(name + ".txt"));
    }

    /** Kills a worker and what runs on it, at once and without a word. */
    void killWorker(int number) throws InterruptedException {
        Process worker = workers.get(number);
        List<ProcessHandle> all = Stream.concat(worker.descendants(), Stream.of(worker.toHandle()))
                .toList();
        all.forEach(ProcessHandle::destroyForcibly);
        worker.waitFor(10, TimeUnit.SECONDS);
    }

    /** Processor time of all workers and of what runs on them now. */
    Duration busy() {
        return workers.stream()
                .flatMap(worker -> Stream.concat(worker.descendants(), Stream.of(worker.toHandle())))
                .map(process -> process.info().totalCpuDuration().orElse(Duration.ZERO))
                .reduce(Duration.ZERO, Duration::plus);
    }

    @Override
    public void close() {
        for (Process process :
                Stream.concat(workers.stream(), Stream.of(master)).toList()) {
            List<ProcessHandle> children = process.descendants().toList();
            process.destroyForcibly();
            children.forEach(ProcessHandle::destroyForcibly);
            process.onExit().orTimeout(10, TimeUnit.SECONDS).join();
        }
        unlink();
    }

    /** The links, not what they lead to. */
    private void unlink() {
        try (Stream<Path> links = Files.list(home.resolve("jars"))) {
            for (Path link : links.toList()) {
                Files.delete(link);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
