package settlemark.ui;

import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;

/** Frames stacked byte under byte, the newest first; bytes that change are underlined; picked bytes stand in a frame. */
final class FrameStack extends Painted {
    private static final double CELL = 46;
    private static final double ROW = 27;
    private static final double BARS = 92;
    private static final double LEFT = 20;
    private static final int MOST_ROWS = 40;

    private List<byte[]> frames = List.of();
    private boolean[] changing = new boolean[0];
    private List<WorkshopDraft.Picked> fields = List.of();
    private Map<String, String> said = Map.of();
    private String start = "";
    private int startBytes;
    private int checkBytes;
    private int from = -1;
    private int to = -1;

    /** Bytes that are picked. */
    record Picked(int from, int to) {}

    /** @param picked hears which bytes */
    FrameStack(Look look, Consumer<Picked> picked) {
        super(look, AccessibleRole.TABLE);
        setCursor(Cursor.getPredefinedCursor(Cursor.TEXT_CURSOR));
        MouseAdapter pointer = new MouseAdapter() {
            private int begun = -1;

            @Override
            public void mousePressed(MouseEvent event) {
                begun = byteAt(event.getX());
                tell(event);
            }

            @Override
            public void mouseDragged(MouseEvent event) {
                tell(event);
            }

            private void tell(MouseEvent event) {
                int at = byteAt(event.getX());
                if (begun >= 0 && at >= 0) {
                    picked.accept(new Picked(Math.min(begun, at), Math.max(begun, at) + 1));
                }
            }
        };
        addMouseListener(pointer);
        addMouseMotionListener(pointer);
    }

    private int byteAt(int x) {
        int at = (int) Math.floor((x - look.px(LEFT)) / cell());
        return at >= 0 && at < changing.length ? at : -1;
    }

    private double cell() {
        double room = getWidth() - 2 * look.px(LEFT);
        return changing.length == 0 ? look.px(CELL) : Math.min(look.px(CELL), room / changing.length);
    }

    /**
     * Shows frames.
     *
     * @param newSaid what a field says in the newest frame, by its name
     */
    void show(List<byte[]> newFrames, WorkshopDraft draft, Map<String, String> newSaid, Picked picked) {
        frames = newFrames;
        changing = WorkshopDraft.changing(newFrames);
        fields = draft.fields();
        said = newSaid;
        startBytes = draft.startBytes();
        start = startBytes > 0 && !frames.isEmpty() && frames.get(0).length >= startBytes
                ? HexFormat.ofDelimiter(" ").withUpperCase().formatHex(frames.get(0), 0, startBytes)
                : "";
        checkBytes = switch (draft.check()) {
            case NONE -> 0;
            case SUM_8, XOR_8 -> 1;
            default -> 2;
        };
        from = picked.from();
        to = picked.to();
        sentence(words());
        repaint();
    }

    private String words() {
        StringBuilder words = new StringBuilder(Words.say("{0} frames", frames.size()));
        if (from >= 0) {
            words.append("; ").append(Words.say("picked: bytes {0} to {1}", from, to - 1));
        }
        fields.forEach(f -> words.append("; ").append(f.name()).append(' ').append(said.getOrDefault(f.name(), "")));
        return words.toString();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(look.ipx(600), look.ipx(BARS + 40 + ROW * 10));
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        if (frames.isEmpty()) {
            pen.paragraph(
                    Words.say(
                            "No frames yet: open a capture or a file with a line of hexadecimal pairs a frame, or listen"
                                    + " to a port."),
                    look.regular(Look.NAME),
                    pen.theme().ink2(),
                    look.px(LEFT),
                    look.px(50),
                    getWidth() - 2 * look.px(LEFT));
            return;
        }
        double cell = cell();
        double left = look.px(LEFT);
        bars(pen, left, cell);
        double top = look.px(BARS);
        for (int i = 0; i < changing.length; i++) {
            pen.textCentred(
                    String.valueOf(i), look.regular(Look.AXIS), pen.theme().ink2(), left + (i + 0.5) * cell, top);
        }
        rows(pen, left, cell, top + look.px(8));
    }

    /** Start, fields and check as bars over their bytes, each with what it says. */
    private void bars(Pen pen, double left, double cell) {
        if (startBytes > 0) {
            bar(pen, left, startBytes * cell, Words.say("start"), start, false);
        }
        for (WorkshopDraft.Picked field : fields) {
            boolean here = from >= 0 && from < field.to() && field.from() < to;
            String value = said.getOrDefault(field.name(), "");
            bar(pen, left + field.from() * cell, (field.to() - field.from()) * cell, field.name(), value, here);
        }
        if (checkBytes > 0) {
            double x = left + (changing.length - checkBytes) * cell;
            bar(pen, x, checkBytes * cell, Words.say("check"), Words.say("fits"), false);
        }
    }

    private void bar(Pen pen, double x, double width, String name, String value, boolean strong) {
        double y = look.px(70);
        double foot = look.px(7);
        double stroke = look.px(strong ? 4 : 2);
        pen.line(pen.theme().ink(), stroke, x + 2, y, x + width - 2, y);
        pen.line(pen.theme().ink(), stroke, x + 2, y, x + 2, y + foot);
        pen.line(pen.theme().ink(), stroke, x + width - 2, y, x + width - 2, y + foot);
        Font small = look.regular(Look.BODY);
        Font bold = look.semiBold(Look.BODY);
        double room = Math.max(width, look.px(CELL) * 2) - look.px(4);
        pen.text(Fitted.words(name, small, room), small, pen.theme().ink2(), x + 2, look.px(34));
        pen.text(Fitted.words(value, bold, room), bold, pen.theme().ink(), x + 2, look.px(55));
    }

    private void rows(Pen pen, double left, double cell, double top) {
        int count = Math.min(frames.size(), Math.min(MOST_ROWS, (int) ((getHeight() - top) / look.px(ROW))));
        if (from >= 0) {
            var box = Pen.box(
                    left + from * cell, top, (to - from) * cell, count * look.px(ROW) + look.px(4), look.px(3), 0);
            pen.fill(pen.theme().settled(), box);
            pen.outline(pen.theme().series().get(1), look.px(3), box);
        }
        Font plain = look.regular(Look.NAME);
        Font bold = look.semiBold(Look.NAME);
        for (int r = 0; r < count; r++) {
            byte[] frame = frames.get(frames.size() - 1 - r);
            double y = top + (r + 0.75) * look.px(ROW);
            for (int i = 0; i < frame.length; i++) {
                String hex = String.format(Locale.ROOT, "%02X", frame[i]);
                double middle = left + (i + 0.5) * cell;
                pen.textCentred(
                        hex,
                        changing[i] ? bold : plain,
                        changing[i] ? pen.theme().ink() : pen.theme().ink2(),
                        middle,
                        y);
                if (changing[i]) {
                    double half = Math.min(cell * 0.4, look.px(12));
                    pen.line(
                            pen.theme().ink(),
                            look.px(2),
                            middle - half,
                            y + look.px(4),
                            middle + half,
                            y + look.px(4));
                }
            }
        }
    }
}
