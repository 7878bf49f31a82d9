package settlemark.ui;

import java.awt.EventQueue;
import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.imageio.ImageIO;

/** Paints the window in each of its scenes and keeps the pictures: arguments are the folder, width, height, dark. */
public final class ScreenshotMain {
    private ScreenshotMain() {}

    public static void main(String[] args) throws Exception {
        File folder = new File(args[0]);
        int width = Integer.parseInt(args[1]);
        int height = Integer.parseInt(args[2]);
        boolean dark = args[3].equals("dark");
        String only = args.length > 4 ? args[4] : "";
        folder.mkdirs();
        for (Map.Entry<String, Supplier<Showroom>> shot : Shots.all().entrySet()) {
            if (shot.getKey().contains(only)) {
                shoot(
                        folder,
                        shot.getKey(),
                        shot.getValue().get(),
                        new DesktopOptions(dark, Optional.empty(), width, height));
            }
        }
        System.exit(0);
    }

    private static void shoot(File folder, String name, Showroom room, DesktopOptions options) throws Exception {
        FakeDesk desk = new FakeDesk(room.snapshot());
        FakeHost host = new FakeHost();
        Desktop desktop = Desktop.open(desk, Optional.of(new FakeHands()), Optional.empty(), host, options);
        desk.show(room.snapshot());
        String size = options.widthPx() + (options.dark() ? "-dark" : "");
        keep(desktop, folder, name + "-" + size);
        if (name.contains("armed")) {
            act(desktop, Deed.FAR_VIEW);
            keep(desktop, folder, name + "-far-" + size);
            act(desktop, Deed.FAR_VIEW);
            act(desktop, Deed.SKIP);
            keep(desktop, folder, name + "-skip-" + size);
            act(desktop, Deed.NOW);
            act(desktop, Deed.KEYS);
            keep(desktop, folder, name + "-keys-" + size);
            act(desktop, Deed.NOW);
            EventQueue.invokeAndWait(() -> desktop.controller().openColumn("found-high"));
            keep(desktop, folder, name + "-back-" + size);
        }
        if (name.contains("record")) {
            desk.show(room.person("R. Moss").snapshot());
            EventQueue.invokeAndWait(desktop::tick);
            act(desktop, Deed.PRIMARY);
            host.written(
                    Path.of("/home/moss/settlemark/2026-03-14-1002-ash-lane/record.pdf"),
                    Path.of("/home/moss/settlemark/2026-03-14-1002-ash-lane/readings.csv"));
            keep(desktop, folder, name + "-written-" + size);
        }
        EventQueue.invokeAndWait(desktop::close);
    }

    private static void act(Desktop desktop, Deed deed) throws Exception {
        EventQueue.invokeAndWait(() -> desktop.controller().perform(deed));
    }

    private static void keep(Desktop desktop, File folder, String name) throws Exception {
        for (int i = 0; i < 4; i++) {
            EventQueue.invokeAndWait(desktop::tick);
        }
        EventQueue.invokeAndWait(() -> {
            var pane = desktop.frame().getContentPane();
            BufferedImage image = new BufferedImage(pane.getWidth(), pane.getHeight(), BufferedImage.TYPE_INT_RGB);
            var g = image.createGraphics();
            pane.printAll(g);
            g.dispose();
            try {
                ImageIO.write(image, "png", new File(folder, name + ".png"));
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
    }
}
