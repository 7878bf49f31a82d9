package settlemark.ui;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.IntConsumer;
import javax.accessibility.AccessibleRole;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;

/** One of several to be chosen, within a face: by arrows and Enter, by the digits, or by the mouse; Esc leaves it. */
final class PickList extends JPanel {
    private static final double ROW = 54;

    private final transient Look look;
    private final JLabel question = new FittedLabel();
    private final JLabel keys = new FittedLabel(Words.say("Up, Down and Enter, or click; Esc leaves it as it is"));
    private final DefaultListModel<Option> options = new DefaultListModel<>();
    private final JList<Option> list = new JList<>(options);
    private final JScrollPane scroll = new JScrollPane(list);
    private final JTextArea known = new JTextArea();
    private transient IntConsumer then = index -> {};
    private transient Runnable left = () -> {};

    /** @param more the small line; may be empty */
    record Option(String title, String more) {
        @Override
        public String toString() {
            return more.isEmpty() ? title : title + ", " + more;
        }
    }

    PickList(Look look) {
        super(new BorderLayout());
        this.look = look;
        JPanel top = new JPanel(new BorderLayout());
        top.setOpaque(false);
        top.add(question, BorderLayout.WEST);
        top.add(keys, BorderLayout.EAST);
        top.setBorder(BorderFactory.createEmptyBorder(look.ipx(10), look.ipx(14), look.ipx(8), look.ipx(14)));
        add(top, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
        known.setEditable(false);
        known.setFocusable(false);
        known.setLineWrap(true);
        known.setWrapStyleWord(true);
        known.setOpaque(false);
        known.setBorder(BorderFactory.createEmptyBorder(look.ipx(8), look.ipx(46), look.ipx(12), look.ipx(14)));
        top.add(known, BorderLayout.SOUTH);
        list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        list.setCellRenderer(new Cell(look));
        list.setFixedCellHeight(look.ipx(ROW));
        question.setLabelFor(list);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        bind("ENTER", () -> choose(list.getSelectedIndex()));
        bind("SPACE", () -> choose(list.getSelectedIndex()));
        bind("ESCAPE", this::leave);
        for (int i = 0; i < 9; i++) {
            int index = i;
            bind(String.valueOf(i + 1), () -> choose(index));
        }
        list.addMouseListener(new MouseAdapter() {
            @Override
            public void mouseReleased(MouseEvent event) {
                int index = list.locationToIndex(event.getPoint());
                if (index >= 0 && list.getCellBounds(index, index).contains(event.getPoint())) {
                    choose(index);
                }
            }
        });
        setVisible(false);
        restyle();
    }

    private void bind(String key, Runnable action) {
        list.getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(key), key);
        list.getActionMap().put(key, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent event) {
                action.run();
            }
        });
    }

    /** Fonts and colours after a change of theme. */
    void restyle() {
        question.setFont(look.semiBold(Look.LABEL));
        question.setForeground(look.theme().ink());
        keys.setFont(look.regular(Look.BODY));
        keys.setForeground(look.theme().ink2());
        known.setFont(look.regular(Look.BODY));
        known.setForeground(look.theme().ink());
        list.setBackground(look.theme().sheet());
        scroll.getViewport().setBackground(look.theme().sheet());
        setBorder(BorderFactory.createMatteBorder(0, 0, 2, 0, look.theme().rule()));
    }

    /**
     * Asks; what was asked before is left.
     *
     * @param toBeKnown before it is answered, said above the options; may be empty
     * @param chosen gets the index
     * @param newLeft runs when the list goes without a choice
     */
    void ask(String words, List<Option> newOptions, String toBeKnown, IntConsumer chosen, Runnable newLeft) {
        known.setText(toBeKnown);
        known.getAccessibleContext().setAccessibleName(toBeKnown);
        known.setVisible(!toBeKnown.isEmpty());
        question.setText(words);
        getAccessibleContext().setAccessibleName(words);
        list.getAccessibleContext().setAccessibleName(words);
        options.clear();
        newOptions.forEach(options::addElement);
        list.setSelectedIndex(0);
        list.ensureIndexIsVisible(0);
        then = chosen;
        left = newLeft;
        setVisible(true);
        list.requestFocusInWindow();
    }

    void ask(String words, List<Option> newOptions, IntConsumer chosen, Runnable newLeft) {
        ask(words, newOptions, "", chosen, newLeft);
    }

    private void choose(int index) {
        if (isVisible() && index >= 0 && index < options.size()) {
            setVisible(false);
            left.run();
            then.accept(index);
        }
    }

    void leave() {
        if (isVisible()) {
            setVisible(false);
            left.run();
        }
    }

    JList<Option> choices() {
        return list;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** A row of the list. */
    private static final class Cell extends Painted implements ListCellRenderer<Option> {
        private Option option = new Option("", "");
        private int number;
        private boolean selected;

        Cell(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        @Override
        public Component getListCellRendererComponent(
                JList<? extends Option> of, Option value, int index, boolean isSelected, boolean focused) {
            option = value;
            number = index + 1;
            selected = isSelected;
            sentence(value.toString());
            return this;
        }

        @Override
        public Dimension getPreferredSize() {
            return new Dimension(look.ipx(300), look.ipx(ROW));
        }

        @Override
        void draw(Pen pen) {
            pen.fill(selected ? pen.theme().primary() : pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            var ink = selected ? pen.theme().primaryText() : pen.theme().ink();
            var second = selected ? pen.theme().primaryText() : pen.theme().ink2();
            double middle = getHeight() / 2.0 + look.px(6.5);
            if (number <= 9) {
                pen.text(String.valueOf(number), look.regular(Look.NAME), second, look.px(16), middle);
            }
            double room = getWidth() - look.px(56);
            double more = Math.min(room / 2, Look.width(option.more(), look.regular(Look.BODY)) + look.px(16));
            double end = pen.fit(option.title(), look.semiBold(Look.NAME), ink, look.px(46), middle, room - more);
            double left = end + look.px(16);
            pen.fit(option.more(), look.regular(Look.BODY), second, left, middle, getWidth() - look.px(10) - left);
            pen.line(pen.theme().hair(), 1.4, 0, getHeight() - 1, getWidth(), getHeight() - 1);
        }
    }
}
