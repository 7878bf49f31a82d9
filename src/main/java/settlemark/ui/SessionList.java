package settlemark.ui;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import settlemark.chart.Mark;
import settlemark.session.SessionStore;

/** The stored sessions, each a strip folded to ticks, under a line to search by date, appliance and verdict. */
final class SessionList extends JPanel {
    static final double WIDTH = 286;
    private static final double ROW = 78;

    /** More where a second person has said a word. */
    private static final double WORD = 20;

    private final transient Look look;
    private final JTextField field = new JTextField();
    private final DefaultListModel<SessionLine> shown = new DefaultListModel<>();
    private final JList<SessionLine> list = new JList<>(shown);
    private final JScrollPane scroll = new JScrollPane(list);
    private final JLabel count = new FittedLabel(" ");
    private final transient Consumer<SessionLine> opened;
    private boolean filling;

    /**
     * @param typed hears what is searched for
     * @param opened hears which session is to be opened
     */
    SessionList(Look look, Consumer<String> typed, Consumer<SessionLine> opened) {
        super(new BorderLayout());
        this.look = look;
        this.opened = opened;
        String search = Words.say("Search: place, appliance, outside, since Oct");
        field.getAccessibleContext().setAccessibleName(search);
        field.setToolTipText(search);
        field.putClientProperty("JTextField.placeholderText", Words.say("place, outside, since Oct"));
        field.getDocument().addDocumentListener(new Typed(() -> typed.accept(field.getText())));
        field.addActionListener(e -> list.requestFocusInWindow());
        list.getAccessibleContext().setAccessibleName(Words.say("sessions"));
        list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        list.setCellRenderer(new Cell(look));
        list.setFixedCellWidth(look.ipx(WIDTH));
        scroll.setBorder(BorderFactory.createEmptyBorder());
        bind(list, "ENTER", this::open);
        bind(list, "SPACE", this::open);
        bind(field, "DOWN", list::requestFocusInWindow);
        list.addMouseListener(new MouseAdapter() {
            @Override
            public void mouseReleased(MouseEvent event) {
                open();
            }
        });
        JPanel top = new JPanel(new BorderLayout());
        top.setOpaque(false);
        top.setBorder(BorderFactory.createEmptyBorder(look.ipx(8), look.ipx(14), look.ipx(12), look.ipx(14)));
        top.add(field);
        add(top, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
        add(count, BorderLayout.SOUTH);
        getAccessibleContext().setAccessibleName(Words.say("stored sessions"));
        restyle();
    }

    private static void bind(JComponent on, String key, Runnable action) {
        on.getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(key), key);
        on.getActionMap().put(key, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent event) {
                action.run();
            }
        });
    }

    private void open() {
        SessionLine chosen = list.getSelectedValue();
        if (chosen != null && !filling) {
            opened.accept(chosen);
        }
    }

    void restyle() {
        field.setFont(look.regular(Look.NAME - 1));
        InlineRow.style(field, look);
        field.setPreferredSize(new Dimension(look.ipx(200), look.ipx(44)));
        list.setBackground(look.theme().window());
        scroll.getViewport().setBackground(look.theme().window());
        count.setFont(look.regular(Look.BODY));
        count.setForeground(look.theme().ink2());
        count.setBorder(BorderFactory.createEmptyBorder(look.ipx(6), look.ipx(20), look.ipx(8), look.ipx(8)));
    }

    /**
     * Shows the lines that fit.
     *
     * @param words how many there are, or what is wrong
     */
    void show(List<SessionLine> lines, String words) {
        filling = true;
        SessionLine before = list.getSelectedValue();
        shown.clear();
        lines.forEach(shown::addElement);
        for (int i = 0; i < lines.size() && before != null; i++) {
            if (lines.get(i).workspace().equals(before.workspace())
                    && lines.get(i).summary().number() == before.summary().number()) {
                list.setSelectedIndex(i);
            }
        }
        if (list.isSelectionEmpty() && !lines.isEmpty()) {
            list.setSelectedIndex(0);
        }
        filling = false;
        count.setText(words);
        count.setToolTipText(words);
        count.getAccessibleContext().setAccessibleName(words);
    }

    void select(int index) {
        if (index >= 0 && index < shown.size()) {
            list.setSelectedIndex(index);
            list.ensureIndexIsVisible(index);
        }
    }

    /** Where the selection of another list is. */
    void goOn(SessionList before) {
        show(Collections.list(before.shown.elements()), before.count.getText());
        select(before.list.getSelectedIndex());
    }

    JTextField field() {
        return field;
    }

    JList<SessionLine> lines() {
        return list;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().window());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** Title, date and ticks of a session. */
    private static final class Cell extends Painted implements ListCellRenderer<SessionLine> {
        private SessionLine line = NOTHING;
        private boolean selected;
        private boolean focused;

        private static final SessionLine NOTHING = new SessionLine(
                Path.of(""),
                new SessionStore.Summary(0, "", "", Instant.EPOCH, true, false, 0),
                Instant.EPOCH.atZone(ZoneOffset.UTC),
                "",
                "",
                Optional.empty(),
                Optional.empty());

        Cell(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        @Override
        public Component getListCellRendererComponent(
                JList<? extends SessionLine> of, SessionLine value, int index, boolean isSelected, boolean hasFocus) {
            line = value;
            selected = isSelected;
            focused = isSelected && of.isFocusOwner();
            sentence(value.summary().title() + ", " + when(value) + ", "
                    + (value.isJob() ? Words.told(value.verdict()) : Words.say("log"))
                    + (value.reviewed().isEmpty() ? "" : ", " + value.reviewed())
                    + (value.judgedAgain().isEmpty() ? "" : ", " + value.judgedAgain())
                    + (value.summary().simulated() ? Words.say(", SIMULATED") : ""));
            return this;
        }

        private static String when(SessionLine of) {
            return of.startedAt().format(DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Words.locale()));
        }

        @Override
        public Dimension getPreferredSize() {
            int more = (line.word().isEmpty() ? 0 : 1) + (line.judgedAgain().isEmpty() ? 0 : 1);
            return new Dimension(look.ipx(200), look.ipx(ROW + more * WORD));
        }

        @Override
        void draw(Pen pen) {
            pen.fill(selected ? pen.theme().sheet() : pen.theme().window(), 0, 0, getWidth(), getHeight());
            if (selected) {
                pen.fill(pen.theme().ink(), 0, 0, look.px(7), getHeight());
            }
            double x = look.px(20);
            double room = getWidth() - x - look.px(10);
            pen.text(
                    Fitted.words(line.summary().title(), look.semiBold(Look.NAME - 1), room),
                    look.semiBold(Look.NAME - 1),
                    pen.theme().ink(),
                    x,
                    look.px(23));
            double end =
                    pen.text(when(line), look.regular(Look.BODY), pen.theme().ink2(), x, look.px(43));
            if (line.summary().simulated()) {
                pen.text(
                        Words.say("SIMULATED"),
                        look.semiBold(Look.AXIS),
                        pen.theme().ink(),
                        end + look.px(10),
                        look.px(43));
            }
            ticks(pen, x, room);
            pen.fit(line.reviewed(), look.semiBold(Look.AXIS), pen.theme().ink(), x, look.px(ROW + 8), room);
            pen.fit(line.judgedAgain(), look.regular(Look.AXIS), pen.theme().ink2(), x, look.px(ROW + WORD + 8), room);
            pen.line(pen.theme().hair(), 1.4, x, getHeight() - 1, getWidth() - x, getHeight() - 1);
            if (focused) {
                double ring = Look.FOCUS_RING;
                pen.outline(
                        pen.theme().series().get(1), ring, Pen.box(0, 0, getWidth(), getHeight(), ring, Look.RADIUS));
            }
        }

        private void ticks(Pen pen, double x, double room) {
            if (line.steps().map(s -> s.marks().isEmpty()).orElse(true)) {
                String words = !line.isJob()
                        ? Words.say("log, without a job")
                        : line.steps().isEmpty()
                                ? Words.say("not looked at yet")
                                : Words.say("cannot be run through again");
                pen.text(words, look.regular(Look.AXIS), pen.theme().ink2(), x, look.px(65));
                return;
            }
            List<Mark> marks = line.steps().get().marks();
            double size = Math.min(look.px(15), room / marks.size() - look.px(3));
            double at = x;
            for (Mark mark : marks) {
                mark.draw(pen.g, at, look.px(53), size, pen.theme());
                at += Math.min(size + look.px(6), room / marks.size());
            }
        }
    }
}
