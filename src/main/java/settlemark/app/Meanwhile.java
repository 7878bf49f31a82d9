package settlemark.app;

import java.io.Closeable;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import settlemark.session.StoreException;

/** Work that is done on a thread of its own while something else goes on. */
final class Meanwhile<T> implements Closeable {
    private final String what;
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> new Thread(task, "work"));
    private final Future<T> result;

    /** @param what the work is, for a message */
    Meanwhile(String what, Work<T> work) {
        this.what = what;
        this.result = thread.submit(work::done);
    }

    interface Work<T> {
        T done() throws StoreException, IOException;
    }

    /** Waits for it; throws what the work threw. */
    T result() throws StoreException, IOException {
        try {
            return result.get();
        } catch (ExecutionException e) {
            Throwable cause = e.getCause();
            if (cause instanceof StoreException store) {
                throw store;
            }
            if (cause instanceof IOException disk) {
                throw disk;
            }
            throw new IllegalStateException(what + " failed", cause);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException(what + " was not finished: the program is ending");
        }
    }

    /** Waits until the work has ended, wanted or not: it uses files that may go now. */
    @Override
    public void close() {
        thread.shutdownNow();
        boolean interrupted = false;
        while (!thread.isTerminated()) {
            try {
                thread.awaitTermination(1, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
