package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.List;
import org.junit.jupiter.api.Test;

class DigitFieldTest {
    private static final int WIDTH = 420;
    private static final int HEIGHT = 84;
    private final Look look = Painting.look();

    private BufferedImage painted(String text, boolean settled) {
        DigitField field = new DigitField(look);
        field.setSize(WIDTH, HEIGHT);
        field.digitPx(76);
        field.show(text, settled, false);
        return Painting.paint(field);
    }

    /** A digit that is cut off would be another number: the walk looks for that in every view. */
    @Test
    void aNumberThatIsLongerThanItsRoomIsSmallerAndWhole() {
        DigitField field = new DigitField(Painting.look());
        field.digitPx(40);
        field.setSize(140, 44);
        field.show("1.00", false, false);
        assertThat(field.textWidth()).isEqualTo(DigitField.width("1.00", Painting.look(), 40));
        field.show(Numbers.MINUS + "100.020", false, false);
        assertThat(DigitField.width(Numbers.MINUS + "100.020", Painting.look(), 40))
                .isGreaterThan(140);
        assertThat(field.textWidth()).isBetween(130.0, 140.0 + 1e-6);
    }

    @Test
    void digitsStandInTheSameCellsFromNothingToNineHundred() {
        double fontPx = DigitField.fontPx(look, 76);
        List<DigitField.Cell> widest = DigitField.cells("888.8", look, fontPx);
        for (int tenths = 0; tenths <= 9999; tenths++) {
            List<DigitField.Cell> cells = DigitField.cells(Numbers.fixed(tenths / 10.0, 1), look, fontPx);
            for (int i = 1; i <= cells.size(); i++) {
                DigitField.Cell cell = cells.get(cells.size() - i);
                DigitField.Cell place = widest.get(widest.size() - i);
                assertThat(cell.fromRight()).isEqualTo(place.fromRight());
                assertThat(cell.width()).isEqualTo(place.width());
            }
        }
    }

    @Test
    void everyDigitOfBothCutsStaysInsideItsCell() {
        double digit =
                DigitField.cells("8", look, DigitField.fontPx(look, 76)).get(0).width();
        for (boolean settled : new boolean[] {false, true}) {
            for (char c = '0'; c <= '9'; c++) {
                BufferedImage image = painted(String.valueOf(c), settled);
                int left = WIDTH;
                int right = 0;
                for (int x = 0; x < WIDTH; x++) {
                    for (int y = 0; y < HEIGHT; y++) {
                        if (Painting.grey(image, x, y) < 200) {
                            left = Math.min(left, x);
                            right = Math.max(right, x);
                        }
                    }
                }
                assertThat((double) left).as("left edge of %s", c).isGreaterThanOrEqualTo(WIDTH - digit - 1);
                assertThat(right).as("right edge of %s", c).isLessThan(WIDTH);
                assertThat((left + right) / 2.0)
                        .as("middle of %s", c)
                        .isBetween(WIDTH - digit * 0.62, WIDTH - digit * 0.38);
            }
        }
    }

    @Test
    void thePointKeepsItsPixelsWhateverStandsAroundIt() {
        List<Integer> first = pointColumns(painted("0.00", false));
        assertThat(first).isNotEmpty();
        for (String text : List.of("1.11", "9.99", "10.47", "\u22120.05")) {
            assertThat(pointColumns(painted(text, false))).as(text).isEqualTo(first);
        }
    }

    /** Dark columns of the point's cell near the baseline. */
    private List<Integer> pointColumns(BufferedImage image) {
        DigitField.Cell point =
                DigitField.cells("0.00", look, DigitField.fontPx(look, 76)).get(1);
        int left = (int) Math.ceil(WIDTH - point.fromRight() - point.width());
        int right = (int) Math.floor(WIDTH - point.fromRight());
        return java.util.stream.IntStream.range(left + 2, right - 2)
                .filter(x -> Painting.grey(image, x, HEIGHT / 2 + 34) < 128)
                .boxed()
                .toList();
    }

    @Test
    void digitsAreAsHighAsAskedFor() {
        BufferedImage image = painted("1", true);
        int top = HEIGHT;
        int bottom = 0;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                if (Painting.grey(image, x, y) < 128) {
                    top = Math.min(top, y);
                    bottom = Math.max(bottom, y);
                }
            }
        }
        assertThat(bottom - top + 1).isBetween(75, 77);
    }

    @Test
    void aSettledNumberIsHeavierThanAnother() {
        assertThat(dark(painted("3.49", true))).isGreaterThan((int) (dark(painted("3.49", false)) * 1.2));
    }

    private static int dark(BufferedImage image) {
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += Painting.grey(image, x, y) < 128 ? 1 : 0;
            }
        }
        return count;
    }
}
