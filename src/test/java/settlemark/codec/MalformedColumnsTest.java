package settlemark.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Columns whose digests hold and whose contents no writer makes: each is refused with words, never read past its end. */
final class MalformedColumnsTest {
    private static byte[] bytes(Consumer<BitWriter> content) {
        BitWriter out = new BitWriter();
        content.accept(out);
        return out.bytes();
    }

    private static void refused(ThrowingCallable reading, String words) {
        assertThatThrownBy(reading).isInstanceOf(IllegalArgumentException.class).hasMessageContaining(words);
    }

    private static BitReader reader(Consumer<BitWriter> content) {
        byte[] bytes = bytes(content);
        return new BitReader(bytes, 0, bytes.length);
    }

    @Test
    void numbersThatAreNoneAreRefused() {
        refused(
                () -> reader(out -> {
                            for (int i = 0; i < 11; i++) {
                                out.bits(0xff, 8);
                            }
                        })
                        .number(),
                "more than ten bytes");
        refused(() -> reader(out -> out.number(7)).number(6, "a thing"), "a thing must be 0 to 6, got 7");
        refused(() -> reader(out -> out.number(-1)).number(6, "a thing"), "a thing must be 0 to 6, got -1");
        refused(() -> reader(out -> out.bits(1, 8)).bits(64), "ends too early");
        refused(() -> reader(out -> out.bits(1, 16)).goTo(17), "ends too early");
        refused(() -> reader(out -> out.bits(1, 16)).goTo(-1), "ends too early");
        refused(() -> reader(out -> out.bits(0, 16)).finish(), "16 bits too many");
        BitReader rest = reader(out -> out.bits(0b1000_0001, 8));
        rest.bits(1);
        refused(rest::finish, "7 bits too many");
    }

    @Test
    void statusesThatAreNoneAreRefused() {
        refused(
                () -> StatusColumn.read(
                        reader(out -> {
                            out.bits(1, 1);
                            out.number(99);
                            out.number(1);
                        }),
                        3),
                "a sample's status must be 0 to 5");
        refused(
                () -> StatusColumn.read(
                        reader(out -> {
                            out.bits(1, 1);
                            out.number(1);
                            out.number(4);
                        }),
                        3),
                "a run of statuses must be 0 to 3");
        refused(
                () -> StatusColumn.read(
                        reader(out -> {
                            out.bits(1, 1);
                            out.number(1);
                            out.number(0);
                        }),
                        3),
                "a run of statuses is empty");
    }

    @ParameterizedTest
    @CsvSource({"43, 'values of unknown form 43'", "63, 'values of unknown form 63'"})
    void valuesOfAnUnknownFormAreRefused(int form, String words) {
        assertThat(Grid.ALL).hasSizeLessThanOrEqualTo(45);
        int unknown = Math.max(form, Grid.ALL.size());
        refused(
                () -> ValueColumn.open(
                        reader(out -> {
                            out.bits(unknown, 6);
                            out.bits(0, 64);
                        }),
                        3),
                words.replace("43", Integer.toString(unknown)));
    }

    @Test
    void exceptionsBeyondTheColumnAreRefused() {
        refused(
                () -> ValueColumn.open(
                        reader(out -> {
                            out.bits(0, 6);
                            out.number(4);
                        }),
                        3),
                "the number of exceptions must be 0 to 3");
        refused(
                () -> ValueColumn.open(
                        reader(out -> {
                            out.bits(0, 6);
                            out.number(1);
                            out.number(4);
                        }),
                        3),
                "an exception's place must be 0 to 3");
        refused(
                () -> ValueColumn.open(
                        reader(out -> {
                            out.bits(0, 6);
                            out.number(1);
                            out.number(2);
                            out.number(2);
                        }),
                        3),
                "an exception's length must be 0 to 1");
    }

    @Test
    void groupsOfNumbersOfAnUnknownKindAreRefused() {
        refused(() -> IntegerColumn.read(reader(out -> group(out, 5, 0, 0)), 3), "guessed in an unknown way");
        refused(() -> IntegerColumn.read(reader(out -> group(out, 0, 3, 0)), 3), "of an unknown kind");
        refused(() -> IntegerColumn.read(reader(out -> group(out, 0, 2, 32)), 3), "a width of 32");
        refused(() -> IntegerColumn.read(reader(out -> group(out, 0, 1, 63)), 128), "ends too early");
    }

    private static void group(BitWriter out, int way, int kind, int width) {
        out.signed(9);
        out.bits(way, 3);
        out.bits(kind, 2);
        out.bits(width, 6);
    }

    @Test
    void lengthsOfGroupsThatContradictTheGroupsAreRefused() {
        long[] numbers = new long[300];
        Arrays.setAll(numbers, i -> i * 37L % 11);
        byte[] good = bytes(out -> IntegerColumn.write(out, numbers));
        assertThat(IntegerColumn.read(new BitReader(good, 0, good.length), 300)).isEqualTo(numbers);
        refused(
                () -> IntegerColumn.open(
                        reader(out -> {
                            IntegerColumn.write(out, new long[] {1, 2, 3});
                            IntegerColumn.write(out, new long[] {5, -5, 5});
                        }),
                        300),
                "a length of -5");
        refused(
                () -> IntegerColumn.open(
                        reader(out -> {
                            IntegerColumn.write(out, new long[] {1, 2, 3});
                            IntegerColumn.write(out, new long[] {5, 5, 500});
                        }),
                        300),
                "ends too early");
        refused(
                () -> IntegerColumn.read(
                        reader(out -> {
                            IntegerColumn.write(out, new long[] {1, 2, 3});
                            IntegerColumn.write(out, new long[] {64, 64, 64});
                            out.bits(0, 64);
                            out.bits(0, 64);
                            out.bits(0, 64);
                        }),
                        300),
                "not as long as is said");
    }

    @Test
    void statisticsThatAreNoneAreRefused() {
        refused(
                () -> statistics(reader(out -> {
                    out.bits(0, 1);
                    IntegerColumn.write(out, new long[] {3, -1});
                })),
                "a group of -1 measurements");
        refused(
                () -> statistics(reader(out -> {
                    out.bits(1, 1);
                    IntegerColumn.write(out, new long[] {3, 1});
                    out.bits(63, 6);
                })),
                "statistics of unknown form 63");
    }

    private static Groups statistics(BitReader in) {
        return GroupColumn.read(in, 0, 0, new long[2], new long[2]);
    }

    @Test
    void headsThatContradictTheirBlocksAreRefused() {
        byte[] shared = bytes(out -> TimeColumn.write(out, new long[] {1, 2, 3}, Effort.QUICK));
        refused(() -> ColumnSet.read(new byte[0]), "of 0 bytes has no head");
        refused(() -> ColumnSet.read(new byte[] {1, 0, 0, 0, 0, 0, 0, 0, 0}), "has no head");
        refused(() -> ColumnSet.read(new byte[] {100, 0, 0, 0, 0, 0, 0, 0, 0}), "has no head");
        refused(() -> ColumnSet.read(signed(out -> out.bits(2, 8))), "of an unknown form");
        refused(() -> ColumnSet.read(signed(out -> head(out, 1 << 17))), "the number of tables");
        refused(() -> ColumnSet.read(signed(out -> table(out, 0, 5, 5, 0))), "a table of 0 rows");
        refused(() -> ColumnSet.read(signed(out -> table(out, 3, 5, -9, 0))), "a table of 3 rows from 5 to -4");
        refused(() -> ColumnSet.read(signed(out -> table(out, (1 << 20) + 1, 5, 5, 0))), "the number of rows");
        refused(() -> ColumnSet.read(signed(out -> table(out, 3, 5, 5, 9))), "a column's length must be 0 to 0");
        refused(() -> ColumnSet.read(signed(out -> table(out, 3, 5, 5, 0))), "not as long as its head says");
        byte[] whole = ColumnSet.write(List.of(new ColumnSet.Draft(3, 1, 3, shared, List.of())));
        refused(() -> ColumnSet.read(Arrays.copyOf(whole, whole.length + 1)), "not as long as its head says");
        refused(() -> ColumnSet.read(Arrays.copyOf(whole, whole.length - 1)), "column");
        byte[] damaged = whole.clone();
        damaged[5] ^= 1;
        refused(() -> ColumnSet.read(damaged), "digest of a block's head");
        byte[] column = whole.clone();
        column[column.length - 6] ^= 1;
        ColumnSet read = ColumnSet.read(column);
        refused(() -> read.column(read.tables().get(0).shared()), "digest of a column");
        refused(() -> read.bytes(read.tables().get(0).shared()), "digest of a column");
    }

    private static void head(BitWriter out, int tables) {
        out.bits(1, 8);
        out.number(tables);
    }

    private static void table(BitWriter out, int rows, long low, long beyond, int length) {
        head(out, 1);
        out.number(rows);
        out.signed(low);
        out.number(beyond);
        out.number(length);
        out.number(0);
    }

    private static byte[] signed(Consumer<BitWriter> head) {
        byte[] content = Digest.sign(bytes(head), -1);
        return bytes(out -> {
            out.bits(content.length, 32);
            for (byte b : content) {
                out.bits(b & 0xff, 8);
            }
        });
    }

    @Test
    void rowsThatAreNoneAreRefused() {
        byte[] shared = bytes(out -> TimeColumn.write(out, new long[] {1}, Effort.THOROUGH));
        byte[] one = bytes(out -> IntegerColumn.write(out, new long[] {1}));
        byte[] negative = bytes(out -> IntegerColumn.write(out, new long[] {-1}));
        byte[] huge = bytes(out -> IntegerColumn.write(out, new long[] {1L << 40}));
        byte[] three = bytes(out -> IntegerColumn.write(out, new long[] {3}));
        refused(() -> PackedRows.unpack(rows(shared, one, negative, new byte[1])), "rows of more than");
        refused(() -> PackedRows.unpack(rows(shared, one, huge, new byte[1])), "rows of more than");
        refused(() -> PackedRows.unpack(rows(shared, one, three, new byte[] {-1, -1})), "not deflated");
        refused(() -> PackedRows.unpack(rows(shared, one, three, new byte[0])), "gave 0 instead of 3");
        ColumnSet.Draft table = new ColumnSet.Draft(1, 1, 1, shared, List.of());
        refused(() -> PackedRows.unpack(ColumnSet.write(List.of(table, table))), "other columns");
    }

    private static byte[] rows(byte[] shared, byte[] number, byte[] lengths, byte[] content) {
        List<ColumnSet.DraftChannel> channels = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            channels.add(new ColumnSet.DraftChannel(0, i, number));
        }
        channels.add(new ColumnSet.DraftChannel(0, 4, lengths));
        channels.add(new ColumnSet.DraftChannel(0, 5, content));
        return ColumnSet.write(List.of(new ColumnSet.Draft(1, 1, 1, shared, channels)));
    }

    @Test
    void columnsThatAreChangedAnywhereAndSignedAgainAreReadOrRefusedAndNothingElse() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        int refused = 0;
        int trials = 4000;
        for (int trial = 0; trial < trials; trial++) {
            int count = 1 + random.nextInt(400);
            byte[] packed =
                    PackedSamples.pack(List.of(Blocks.random(random, 0, 0, count), Blocks.random(random, 0, 1, count)));
            byte[] changed = changed(random, packed);
            try {
                PackedSamples read = PackedSamples.of(changed);
                for (PackedSamples.Part part : read.parts()) {
                    assertThat(read.read(part).size()).isEqualTo(count);
                }
            } catch (IllegalArgumentException e) {
                assertThat(e).hasMessageMatching("(?s).{10,}");
                refused++;
            }
        }
        System.out.println(trials + " changed blocks, " + refused + " refused");
        assertThat(refused).isBetween(trials / 20, trials - 1);
    }

    /** A few bits of one column are turned, and it is signed again. */
    private static byte[] changed(Random random, byte[] packed) {
        ColumnSet set = ColumnSet.read(packed);
        int victim = random.nextInt(set.tables().size() * 3);
        int at = 0;
        List<ColumnSet.Draft> drafts = new ArrayList<>();
        for (ColumnSet.Table table : set.tables()) {
            byte[] shared = turned(random, set.bytes(table.shared()), at++ == victim);
            List<ColumnSet.DraftChannel> channels = new ArrayList<>();
            for (ColumnSet.Channel channel : table.channels()) {
                byte[] column = turned(random, set.bytes(channel.column()), at++ == victim);
                channels.add(new ColumnSet.DraftChannel(channel.probe(), channel.channel(), column));
            }
            drafts.add(new ColumnSet.Draft(table.rows(), table.low(), table.high(), shared, channels));
        }
        return ColumnSet.write(drafts);
    }

    private static byte[] turned(Random random, byte[] column, boolean really) {
        byte[] bytes = column.clone();
        for (int i = 0; really && i < 3; i++) {
            bytes[random.nextInt(Math.min(bytes.length, 24))] ^= (byte) (1 << random.nextInt(8));
        }
        return bytes;
    }

    @Test
    void statisticsOfAnyNumbersComeBackOrSayNothing() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        for (int trial = 0; trial < 1500; trial++) {
            Groups groups = Groups.of(Blocks.random(random, 0, 0, 1 + random.nextInt(2000)), 128);
            Groups back =
                    PackedGroups.of(PackedGroups.pack(List.of(groups))).read(0).orElseThrow();
            assertThat(back.counts()).isEqualTo(groups.counts());
            assertThat(Blocks.bits(back.mins())).isEqualTo(Blocks.bits(groups.mins()));
            assertThat(Blocks.bits(back.maxs())).isEqualTo(Blocks.bits(groups.maxs()));
            assertThat(Blocks.bits(back.firsts())).isEqualTo(Blocks.bits(groups.firsts()));
            assertThat(Blocks.bits(back.lasts())).isEqualTo(Blocks.bits(groups.lasts()));
        }
    }
}
