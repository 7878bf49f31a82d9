package settlemark.ui;

import java.awt.Graphics;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;
import settlemark.session.ChannelView;

/** At work: every channel large with its gap, and two lanes on one time axis. */
final class WorkFace extends Face {
    private static final double CHART_LEAST = 236;

    private final ChartPane chart;
    private final Remark remark;
    private final transient Readouts readouts;
    private List<Role> roles = List.of();
    private @Nullable String shownStep;

    WorkFace(Look look) {
        super(look, Words.say("at work"));
        chart = new ChartPane(look);
        remark = new Remark(look);
        readouts = new Readouts(look);
        add(chart);
        add(remark);
    }

    @Override
    int neededWidth() {
        return look.ipx(CHART_LEAST) + Readout.neededWidth(look);
    }

    @Override
    void show(Scene scene, boolean digits) {
        List<Role> now =
                scene.snapshot().channels().stream().map(ChannelView::role).toList();
        if (!now.equals(roles)) {
            roles = now;
            removeAll();
            add(chart);
            add(remark);
            readouts.rows(roles).forEach(this::add);
            revalidate();
        }
        boolean other = !scene.open().key().equals(shownStep);
        shownStep = scene.open().key();
        remark.show(scene.open());
        if (digits || other) {
            readouts.show(scene, roles);
        }
        if (chart.outdated(scene)) {
            chart.show(WorkCharts.work(scene), Words.say("the last minutes of {0}", words(now)));
        }
    }

    private static String words(List<Role> roles) {
        return String.join(", ", roles.stream().map(Role::word).map(Words::told).toList());
    }

    List<Readout> rows() {
        return readouts.rows(roles);
    }

    @Override
    public void doLayout() {
        if (roles.isEmpty()) {
            return;
        }
        int above = look.ipx(look.tight() ? 2 : Rows.ABOVE);
        int high = getHeight() - look.ipx(Rows.FOOT) - above;
        int rowHeight = Math.max(1, high / roles.size());
        int useful = Readout.usefulWidth(look, rowHeight);
        int least = Readout.neededWidth(look);
        int width = Math.max(least, Math.min(useful, (int) (getWidth() * 0.68)));
        int left = Math.max(0, getWidth() - width);
        chart.setBounds(look.ipx(4), 0, Math.max(0, left - look.ipx(4)), getHeight());
        remark.setBounds(left, above + high, getWidth() - left, getHeight() - above - high);
        for (int i = 0; i < roles.size(); i++) {
            int top = above + i * high / roles.size();
            int bottom = above + (i + 1) * high / roles.size();
            readouts.row(roles.get(i)).setBounds(left, top, getWidth() - left, bottom - top);
        }
    }

    @Override
    protected void paintChildren(Graphics graphics) {
        super.paintChildren(graphics);
        Pen pen = new Pen(graphics, look);
        try {
            for (int i = 1; i < roles.size(); i++) {
                boolean lane = roles.get(i).dimension() != roles.get(i - 1).dimension();
                double y = readouts.row(roles.get(i)).getY();
                double x = chart.getX() + chart.getWidth() + (lane ? 0 : look.px(4));
                pen.line(lane ? pen.theme().rule() : pen.theme().hair(), lane ? 1.6 : 1.2, x, y, getWidth(), y);
            }
        } finally {
            pen.dispose();
        }
    }
}
