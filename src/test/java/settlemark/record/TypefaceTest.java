package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Area;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.chart.Inter;

class TypefaceTest {
    private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

    /** The JDK's own reading of the same typeface is the other side of this check. */
    @Test
    void widthsAgreeWithTheJdk() {
        for (boolean bold : new boolean[] {false, true}) {
            Font font = bold ? Inter.semiBold(1000) : Inter.regular(1000);
            for (String text : List.of("3.49 \u00B10.02 inH\u2082O", "Ж\u00B0\u03A9\u2192", "AVATAR fi 0123456789")) {
                double jdk = 0;
                for (int i = 0; i < text.length(); i++) {
                    jdk += font.createGlyphVector(EXACT, text.substring(i, i + 1))
                            .getGlyphMetrics(0)
                            .getAdvance();
                }
                assertThat(Typeface.of(bold).width(text, 1000)).isCloseTo(jdk, within(text.length() * 0.6));
            }
        }
    }

    /** A cubic circle against its area: the quadratics made of it must enclose the same to a thousandth. */
    @Test
    void curvesKeepTheOutline() {
        double r = 500;
        double k = 0.5522847498 * r;
        Path2D circle = new Path2D.Double();
        circle.moveTo(r, 0);
        circle.curveTo(r, k, k, r, 0, r);
        circle.curveTo(-k, r, -r, k, -r, 0);
        circle.curveTo(-r, -k, -k, -r, 0, -r);
        circle.curveTo(k, -r, r, -k, r, 0);
        circle.closePath();
        List<List<Curves.Point>> contours = Curves.of(circle);
        assertThat(contours).hasSize(1);
        Path2D back = new Path2D.Double();
        List<Curves.Point> points = contours.get(0);
        back.moveTo(points.get(0).x(), points.get(0).y());
        for (int i = 1; i < points.size(); i += 2) {
            Curves.Point to = points.get((i + 1) % points.size());
            assertThat(points.get(i).on()).isFalse();
            assertThat(to.on()).isTrue();
            back.quadTo(points.get(i).x(), points.get(i).y(), to.x(), to.y());
        }
        assertThat(area(back)).isCloseTo(Math.PI * r * r, within(Math.PI * r * r / 1000));
        Area difference = new Area(back);
        difference.exclusiveOr(new Area(circle));
        assertThat(area(difference)).isLessThan(2 * Math.PI * r * 1.0);
    }

    private static double area(java.awt.Shape shape) {
        double twice = 0;
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        double[] c = new double[2];
        for (PathIterator i = new FlatteningPathIterator(shape.getPathIterator(null), 0.01); !i.isDone(); i.next()) {
            int segment = i.currentSegment(c);
            double toX = segment == PathIterator.SEG_CLOSE ? startX : c[0];
            double toY = segment == PathIterator.SEG_CLOSE ? startY : c[1];
            if (segment == PathIterator.SEG_MOVETO) {
                startX = toX;
                startY = toY;
            } else {
                twice += x * toY - toX * y;
            }
            x = toX;
            y = toY;
        }
        return Math.abs(twice / 2);
    }

    @Test
    void linesFitAndLoseNoWord() {
        String text = "The manifold fell from 3.49 to 0.01 within two seconds " + "unbroken".repeat(20);
        List<String> lines = Face.BODY.wrap(text, 100);
        assertThat(lines).allSatisfy(l -> assertThat(Face.BODY.width(l)).isLessThanOrEqualTo(100));
        assertThat(String.join("", lines).replace(" ", "")).isEqualTo(text.replace(" ", ""));
    }

    @Test
    void whatCannotBePrintedIsReplacedAndControlsAreDropped() {
        assertThat(Printable.of("a\u0000b\u202Ec\tdd\r\ne")).isEqualTo("abc dd  e");
        assertThat(Printable.of("\uFB01\u2002\u00BD")).startsWith("fi ");
        assertThat(Printable.of("\uD83D\uDE00\u05D0")).isEqualTo(Printable.MISSING + Printable.MISSING);
        assertThat(Printable.of("e\u0301")).isEqualTo("\u00E9");
        assertThat(Printable.of("\u00B0\u2082\u00B1\u2713\u0416\u03A9"))
                .isEqualTo("\u00B0\u2082\u00B1\u2713\u0416\u03A9");
    }
}
