package settlemark.ui;

import java.util.List;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.session.ChannelView;

/** The names of the strip's rows, beside the form cells. */
final class RowHeads extends Painted {
    private @Nullable Scene scene;

    RowHeads(Look look) {
        super(look, AccessibleRole.LABEL);
        sentence(Words.say("rows of the strip: inlet, manifold, supply, rise, return, verdict"));
    }

    void show(Scene newScene) {
        scene = newScene;
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().window(), 0, 0, getWidth(), getHeight());
        Scene shown = scene;
        if (shown == null) {
            return;
        }
        List<Dimension> lanes = WorkCharts.lanes(shown.snapshot());
        Rows rows = Rows.of(look, getHeight(), Math.max(1, lanes.size()));
        pen.fit(
                Words.say("Reading"),
                look.regular(Look.AXIS),
                pen.theme().ink2(),
                look.px(8),
                rows.head() - look.px(5),
                getWidth() - look.px(9));
        for (int i = 0; i < lanes.size(); i++) {
            boolean pressure = lanes.get(i) == Dimension.PRESSURE;
            name(pen, shown, pressure ? Role.INLET : Role.SUPPLY, rows.laneTop(i) + look.px(20));
            name(pen, shown, pressure ? Role.MANIFOLD : Role.RETURN, rows.laneBottom(i) - look.px(24));
            if (!pressure) {
                String unit = shown.snapshot().header().temperatureUnit().symbol();
                text(pen, Words.say("Rise"), unit, (rows.laneTop(i) + rows.laneBottom(i)) / 2.0);
            }
        }
        pen.fit(
                Words.say("Verdict"),
                look.semiBold(Look.AXIS),
                pen.theme().ink(),
                look.px(8),
                rows.bottom() + look.px(17),
                getWidth() - look.px(9));
    }

    private void name(Pen pen, Scene shown, Role role, double baseline) {
        shown.snapshot()
                .channel(role)
                .map(ChannelView::unit)
                .ifPresent(u -> text(pen, Numbers.capital(Words.told(role.word())), u.symbol(), baseline));
    }

    private void text(Pen pen, String name, String unit, double baseline) {
        pen.fit(name, look.semiBold(Look.AXIS), pen.theme().ink(), look.px(8), baseline, getWidth() - look.px(9));
        pen.text(unit, look.regular(Look.AXIS), pen.theme().ink2(), look.px(8), baseline + look.px(16));
    }
}
