package settlemark.link;

import java.util.concurrent.CountDownLatch;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;

/** Listens to a port until it is told to end, and prints each change; or prints why it cannot. */
final class ListenMain {
    private ListenMain() {}

    public static void main(String[] args) throws InterruptedException {
        try {
            new SerialHost(Fixtures.THREADS).open(Fixtures.serial(args[0]), Fixtures.PROFILE, Fixtures.ticker(), SAID);
        } catch (LinkException e) {
            System.out.println("refused: " + e.getMessage());
            return;
        }
        new CountDownLatch(1).await();
    }

    private static final LinkListener SAID = new LinkListener() {
        @Override
        public void arrived(Chunk chunk) {}

        @Override
        public void changed(long timeNanos, LinkChange change, String words) {
            System.out.println(change);
        }
    };
}
