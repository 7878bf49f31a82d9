package settlemark.ui;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Font;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JRootPane;
import javax.swing.MenuSelectionManager;
import javax.swing.SwingUtilities;
import javax.swing.event.ChangeEvent;
import javax.swing.event.ChangeListener;
import settlemark.chart.Inter;

/** Every act of a window with its key, in a menu bar that comes with F10 and goes when it is left. */
final class ActMenu implements ChangeListener {
    private static final Set<Deed> NUMBERS =
            EnumSet.of(Deed.TICK_1, Deed.TICK_2, Deed.TICK_3, Deed.SCREW_UP, Deed.SCREW_DOWN, Deed.NOTE);

    private final JRootPane root;
    private final JMenuBar bar = new JMenuBar();

    private ActMenu(JRootPane root, List<Deed> deeds, Consumer<Deed> perform) {
        this.root = root;
        fill(bar, deeds, perform);
        bar.getAccessibleContext().setAccessibleName(Words.say("everything that can be done"));
    }

    /** A menu a group; each has another letter of its name as its key. */
    static void fill(JMenuBar bar, List<Deed> deeds, Consumer<Deed> perform) {
        Set<Character> letters = new HashSet<>();
        for (Map.Entry<String, List<Deed>> group : groups(deeds).entrySet()) {
            JMenu menu = menu(group.getKey(), group.getValue(), perform);
            group.getKey()
                    .chars()
                    .mapToObj(c -> Character.toUpperCase((char) c))
                    .filter(c -> Character.isLetter(c) && letters.add(c))
                    .findFirst()
                    .ifPresent(menu::setMnemonic);
            bar.add(menu);
        }
    }

    /** Opens the first menu of the window that a component is in. */
    static void open(JComponent in, Deed.Place place, Consumer<Deed> perform) {
        JRootPane root = SwingUtilities.getRootPane(in);
        if (root != null && root.getJMenuBar() == null) {
            boolean numbers = place == Deed.Place.START;
            // Before a job the digits choose what has a number, and the arrows move.
            List<Deed> deeds = Deed.of(place).stream()
                    .filter(d -> !numbers || !NUMBERS.contains(d))
                    .toList();
            new ActMenu(root, deeds, perform).show();
        }
    }

    private void show() {
        root.setJMenuBar(bar);
        root.revalidate();
        // Only once it lies somewhere can its first menu drop down.
        SwingUtilities.invokeLater(() -> {
            bar.getMenu(0).doClick(0);
            MenuSelectionManager.defaultManager().addChangeListener(this);
        });
    }

    @Override
    public void stateChanged(ChangeEvent event) {
        if (MenuSelectionManager.defaultManager().getSelectedPath().length == 0) {
            MenuSelectionManager.defaultManager().removeChangeListener(this);
            SwingUtilities.invokeLater(() -> {
                root.setJMenuBar(null);
                root.revalidate();
            });
        }
    }

    private static Map<String, List<Deed>> groups(List<Deed> deeds) {
        Map<String, List<Deed>> groups = new LinkedHashMap<>();
        for (Deed deed : deeds.stream().filter(d -> d != Deed.MENU).toList()) {
            groups.computeIfAbsent(group(deed), g -> new ArrayList<>()).add(deed);
        }
        return groups;
    }

    private static String group(Deed deed) {
        return switch (deed) {
            case LEFT,
                    RIGHT,
                    FIRST,
                    LAST,
                    NOW,
                    FIND,
                    READING_BEFORE,
                    READING_NEXT,
                    GAP_NEXT,
                    NOTE_NEXT,
                    ROW_UP,
                    ROW_DOWN,
                    ROW_FIRST,
                    ROW_LAST,
                    PAGE_NEXT,
                    PAGE_BEFORE -> Words.say("Go");
            case BACK_A_LITTLE, ON_A_LITTLE, BACK, ON, ZOOM_IN, ZOOM_OUT, ZOOM_ALL, PLAY, PACE -> Words.say("Time");
            case FAR_VIEW, VISITS, SOUND, UNITS, LANGUAGE, THEME, SIZE, KEYS, MENU, CLOSE -> Words.say("Window");
            case SCREW_UP, SCREW_DOWN, SCREW_UP_MORE, SCREW_DOWN_MORE, SPEED -> Words.say("Demo");
            default -> Words.say("Act");
        };
    }

    private static JMenu menu(String name, List<Deed> deeds, Consumer<Deed> perform) {
        JMenu menu = new JMenu(name);
        menu.setFont(font());
        for (Deed deed : deeds) {
            JMenuItem item = new JMenuItem(Numbers.capital(deed.words()) + "   " + deed.label());
            item.getAccessibleContext().setAccessibleName(Words.say("{0}, key {1}", deed.words(), deed.label()));
            item.addActionListener(e -> perform.accept(deed));
            item.setFont(font());
            menu.add(item);
        }
        return menu;
    }

    /** As all that is written in the window, in the size of text that the person chose. */
    private static Font font() {
        return Inter.regular(UIScale.scale((float) Look.BODY));
    }
}
