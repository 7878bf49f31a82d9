package settlemark.app;

import java.awt.event.KeyEvent;
import java.io.File;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;
import settlemark.ui.WindowHands;

/** Takes pictures of the review: arguments are a workspace, a session, the folder, width, height, light or dark. */
public final class ReviewScreenshotMain {
    private ReviewScreenshotMain() {}

    public static void main(String[] args) throws Exception {
        Path workspace = Path.of(args[0]);
        File folder = new File(args[2]);
        int width = Integer.parseInt(args[3]);
        int height = Integer.parseInt(args[4]);
        String end = "-" + args[5] + "-" + width + ".png";
        DesktopStart start = DesktopStart.show(
                new DesktopOptions(args[5].equals("dark"), Optional.empty(), width, height), "Settlemark");
        ReviewRun review = new ReviewRun(List.of(workspace), Optional.empty(), new PrintWriter(new StringWriter()));
        start.review(review, workspace, Long.parseLong(args[1]), 10, () -> {});
        WindowHands hands = new WindowHands();
        hands.awaitSeen("Record, done");
        hands.key(KeyEvent.VK_SPACE);
        hands.key(KeyEvent.VK_HOME);
        hands.picture(new File(folder, "review-whole" + end), width, height);
        hands.click("As left, high fire");
        hands.awaitWords("laid over");
        hands.picture(new File(folder, "review" + end), width, height);
        start.close();
        System.exit(0);
    }
}
