package witnessmark.triplog.road;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import witnessmark.triplog.gear.GearTable;

/**
 * Writes long logs of busy driving, a shift about every 20 s, to measure reading by: {@code WriteBusyLog FOLDER MB}. The
 * candump log has the engine's frame every 20 ms, the pedal's every 50 ms, road speed and two groups that nobody reads
 * every 100 ms; the CSV log has seven columns at ten rows a second.
 */
public final class WriteBusyLog {
    private static final double DRIVEN_SECONDS = 3600;
    private static final long SEED = 4;
    private static final double ZERO = 1_700_000_000;

    private WriteBusyLog() {}

    /** Writes {@code busy.log} and {@code busy.csv} of so many megabytes. */
    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args[0]);
        long bytes = Long.parseLong(args[1]) * 1_000_000;
        RoadDriver drive = drive();
        write(folder.resolve("busy.log"), bytes, drive.states, "", WriteBusyLog::frames);
        write(
                folder.resolve("busy.csv"),
                bytes,
                drive.states,
                "time_s,engine_rpm,speed_kmh,clutch,accel_pct,brake,gearbox_oil_temp_c\n",
                WriteBusyLog::row);
    }

    /** The numbers of the truck that drove. */
    public static GearTable table() {
        return RoadTrip.table(SEED);
    }

    private interface Form {
        /** The text of the tenth of a second from there on; empty where the form has none. */
        String of(List<RoadState> states, int at, double zero);
    }

    private static RoadDriver drive() {
        RoadDriver drive = RoadTrip.plain(SEED);
        drive.stand(8);
        while (drive.t < DRIVEN_SECONDS) {
            drive.start(drive.low(1));
            drive.upTo(drive.top());
            drive.cruiseFor(drive.uniform(15, 40));
            drive.comeToRest();
        }
        return drive;
    }

    private static void write(Path file, long bytes, List<RoadState> states, String head, Form form)
            throws IOException {
        double length = states.get(states.size() - 1).t() + 1;
        long written = 0;
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            out.write(head.getBytes(StandardCharsets.US_ASCII));
            for (int round = 0; written < bytes; round++) {
                for (int i = 0; i + 1 < states.size() && written < bytes; i += 2) {
                    byte[] text = form.of(states, i, ZERO + round * length).getBytes(StandardCharsets.US_ASCII);
                    out.write(text);
                    written += text.length;
                }
            }
        }
    }

    private static String row(List<RoadState> states, int at, double zero) {
        RoadState s = states.get(at);
        return String.format(
                Locale.ROOT,
                "%.1f,%.1f,%.2f,%d,%.1f,%d,%.1f\n",
                zero + s.t(),
                s.rpm(),
                s.kmh(),
                s.pedal() > 12 ? 1 : 0,
                s.throttle(),
                s.brake() ? 1 : 0,
                s.oil());
    }

    private static String frames(List<RoadState> states, int at, double zero) {
        StringBuilder text = new StringBuilder();
        RoadState s = states.get(at);
        RoadState next = states.get(at + 1);
        for (int i = 0; i < 5; i++) {
            double rpm = s.rpm() + (next.rpm() - s.rpm()) * i / 2.5;
            int raw = (int) Math.round(rpm / 0.125);
            int torque = 125 + (int) Math.round(s.torque());
            frame(text, zero + s.t() + i * 0.02, "0CF00400#F87D%02X%02X%02X00FFFF", torque, raw & 255, raw >> 8);
        }
        int throttle = (int) Math.round(s.throttle() / 0.4);
        frame(text, zero + s.t() + 0.081, "0CF00300#D1%02X2FFFFFFF0FFF", throttle);
        frame(text, zero + s.t() + 0.082, "0CF00300#D1%02X2FFFFFFF0FFF", throttle);
        int kmh = (int) Math.round(s.kmh() * 256);
        int switches = (s.pedal() > 12 ? 0x40 : 0) | (s.brake() ? 0x10 : 0);
        frame(text, zero + s.t() + 0.083, "18FEF100#F7%02X%02X%02X00FFFF30", kmh & 255, kmh >> 8, switches);
        frame(text, zero + s.t() + 0.084, "18FEEF00#FFFFFF7DFFFFFFFF");
        frame(text, zero + s.t() + 0.085, "0CF02300#FFFFFFFFFFFFFFFF");
        return text.toString();
    }

    private static void frame(StringBuilder to, double at, String form, Object... values) {
        to.append(String.format(Locale.ROOT, "(%.6f) can0 ", at));
        to.append(String.format(Locale.ROOT, form, values)).append('\n');
    }
}
