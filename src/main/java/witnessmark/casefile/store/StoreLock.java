package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;

/**
 * Held by the one shell that opens, closes or writes to the store in a folder. The system gives it back when a shell is
 * killed. Waiting for it is bounded.
 */
final class StoreLock implements AutoCloseable {
    private static final String FILE = "cases.turn";
    private static final long LONGEST_WAIT_MS = 30_000;

    /** Within one process a folder is held through this, as the system's lock belongs to the whole process. */
    private static final Map<Path, ReentrantLock> INSIDE = new ConcurrentHashMap<>();

    private final ReentrantLock inside;
    /** Null where this thread has the turn already. */
    private final @Nullable FileChannel channel;

    /** Waits for the turn of this shell; {@link StoreUnavailable} if it does not come. */
    static StoreLock take(Path folder) {
        ReentrantLock inside = INSIDE.computeIfAbsent(folder, f -> new ReentrantLock());
        long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(LONGEST_WAIT_MS);
        try {
            if (!inside.tryLock(LONGEST_WAIT_MS, TimeUnit.MILLISECONDS)) {
                throw busy(folder);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw busy(folder);
        }
        try {
            return new StoreLock(inside, folder, until);
        } catch (IOException e) {
            inside.unlock();
            throw new StoreUnavailable(
                    folder.toString(), "its lock cannot be taken", "check that the folder can be written to", e);
        } catch (RuntimeException e) {
            inside.unlock();
            throw e;
        }
    }

    /** For a folder that cannot be written to, where nobody's turn matters. */
    static StoreLock ofReader(Path folder) {
        ReentrantLock inside = INSIDE.computeIfAbsent(folder, f -> new ReentrantLock());
        inside.lock();
        return new StoreLock(inside);
    }

    private StoreLock(ReentrantLock inside) {
        this.inside = inside;
        this.channel = null;
    }

    private StoreLock(ReentrantLock inside, Path folder, long until) throws IOException {
        this.inside = inside;
        if (inside.getHoldCount() > 1) {
            channel = null;
            return;
        }
        channel = OwnerOnly.open(folder.resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            await(folder, channel, until);
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    private static void await(Path folder, FileChannel channel, long until) throws IOException {
        while (channel.tryLock() == null) {
            if (System.nanoTime() > until) {
                throw busy(folder);
            }
            try {
                Thread.sleep(1);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw busy(folder);
            }
        }
    }

    private static StoreUnavailable busy(Path folder) {
        return new StoreUnavailable(
                folder.toString(),
                "another shell has been writing to it for " + LONGEST_WAIT_MS / 1_000 + " seconds",
                "end that shell if it hangs, then repeat");
    }

    @Override
    public void close() {
        try {
            if (channel != null) {
                // The system takes the lock back with the channel.
                channel.close();
            }
        } catch (IOException e) {
            // closed all the same
        } finally {
            inside.unlock();
        }
    }
}
