package settlemark.archproof.measure;

import java.io.File;
import java.io.FileInputStream;
import java.io.IOException;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.concurrent.Executors;
import javax.swing.JLabel;
import settlemark.archproof.ui.Window;

/** Breaks each rule once; never run. */
@SuppressWarnings({"DefaultCharset", "StringCaseLocaleUsage"})
final class Offender {
    private Offender() {}

    static int upwards(Window window) {
        return window.widthPixels();
    }

    static String readsFiles(Path path) throws IOException {
        try (FileInputStream stream = new FileInputStream(new File("x"))) {
            return stream.read() + Files.readString(path);
        }
    }

    static String usesTheNetwork() throws IOException {
        try (Socket socket = new Socket("localhost", 1)) {
            return socket.toString();
        }
    }

    static void makesThreads() {
        new Thread(() -> {}).start();
        Executors.newCachedThreadPool().shutdown();
    }

    static long readsClocks() {
        return System.nanoTime()
                + System.currentTimeMillis()
                + Instant.now().getNano()
                + LocalDate.now().getYear();
    }

    static String usesDefaults() {
        return Locale.getDefault() + ZoneId.systemDefault().getId() + String.format("%s", "x") + "X".toLowerCase();
    }

    static byte[] usesTheDefaultCharset(String text) {
        return text.getBytes();
    }

    static Object usesSwing() {
        return new JLabel("x");
    }

    static void usesSql() throws SQLException {
        DriverManager.getConnection("jdbc:none").close();
    }
}
