package settlemark.benchmark;

import java.io.File;
import java.io.FileOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.tsfile.enums.TSDataType;
import org.apache.tsfile.file.metadata.enums.CompressionType;
import org.apache.tsfile.file.metadata.enums.TSEncoding;
import org.apache.tsfile.read.TsFileReader;
import org.apache.tsfile.read.TsFileSequenceReader;
import org.apache.tsfile.read.common.RowRecord;
import org.apache.tsfile.read.expression.QueryExpression;
import org.apache.tsfile.read.expression.impl.GlobalTimeExpression;
import org.apache.tsfile.read.filter.factory.TimeFilterApi;
import org.apache.tsfile.read.query.dataset.QueryDataSet;
import org.apache.tsfile.write.TsFileWriter;
import org.apache.tsfile.write.record.Tablet;
import org.apache.tsfile.write.schema.IMeasurementSchema;
import org.apache.tsfile.write.schema.MeasurementSchema;
import org.apache.tsfile.write.writer.LocalTsFileOutput;
import org.jspecify.annotations.Nullable;

/** TsFile's aligned series, which share their times, flushed and forced to the disk at each commit. */
// The calls for aligned series are marked as deprecated in this version.
@SuppressWarnings("deprecation")
final class TsFileStore implements Contender {
    private static final String DEVICE = "bench";

    private final List<IMeasurementSchema> schemas = new ArrayList<>();
    private @Nullable FileOutputStream out;
    private @Nullable TsFileWriter writer;
    private @Nullable TsFileReader reader;

    TsFileStore() {
        for (int channel = 0; channel < Scans.CHANNELS; channel++) {
            schemas.add(
                    new MeasurementSchema("c" + channel, TSDataType.DOUBLE, TSEncoding.GORILLA, CompressionType.LZ4));
        }
    }

    @Override
    public String name() {
        return "TsFile, aligned";
    }

    private static File file(Path folder) {
        return folder.resolve("w.tsfile").toFile();
    }

    @Override
    public void create(Path folder) throws Exception {
        out = new FileOutputStream(file(folder));
        writer = new TsFileWriter(new org.apache.tsfile.write.writer.TsFileIOWriter(new LocalTsFileOutput(out)));
        writer.registerAlignedTimeseries(DEVICE, schemas);
    }

    @Override
    public void commit(Scans scans) throws Exception {
        if (writer == null || out == null) {
            throw new IllegalStateException("not created");
        }
        Tablet tablet = new Tablet(DEVICE, schemas, Scans.PER_COMMIT);
        for (int i = 0; i < Scans.PER_COMMIT; i++) {
            tablet.addTimestamp(i, scans.times(0)[i]);
            for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                tablet.addValue(i, channel, scans.values[channel][i]);
            }
        }
        writer.writeAligned(tablet);
        writer.flush();
        out.getFD().sync();
    }

    @Override
    public void finish() throws Exception {
        if (writer != null) {
            writer.close();
        }
    }

    @Override
    public void open(Path folder) throws Exception {
        reader = new TsFileReader(new TsFileSequenceReader(file(folder).toString()));
    }

    private QueryDataSet query(long fromNanos, long toNanos) throws Exception {
        if (reader == null) {
            throw new IllegalStateException("not open");
        }
        List<org.apache.tsfile.read.common.Path> paths = new ArrayList<>();
        for (int channel = 0; channel < Scans.CHANNELS; channel++) {
            paths.add(new org.apache.tsfile.read.common.Path(DEVICE, "c" + channel, true));
        }
        return reader.query(
                QueryExpression.create(paths, new GlobalTimeExpression(TimeFilterApi.between(fromNanos, toNanos))));
    }

    @Override
    public double[][][] overview(long endNanos, int columns) throws Exception {
        double[][][] extremes = new double[Scans.CHANNELS][columns][];
        QueryDataSet rows = query(0, endNanos);
        while (rows.hasNext()) {
            RowRecord row = rows.next();
            int slot = (int) (row.getTimestamp() * columns / endNanos);
            for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                double value = row.getField(channel).getDoubleV();
                double[] known = extremes[channel][slot];
                if (known == null) {
                    extremes[channel][slot] = new double[] {value, value};
                } else {
                    known[0] = Math.min(known[0], value);
                    known[1] = Math.max(known[1], value);
                }
            }
        }
        return extremes;
    }

    @Override
    public long window(long fromNanos, long toNanos) throws Exception {
        long samples = 0;
        QueryDataSet rows = query(fromNanos, toNanos);
        while (rows.hasNext()) {
            RowRecord row = rows.next();
            for (int channel = 0; channel < Scans.CHANNELS; channel++) {
                samples += Double.isNaN(row.getField(channel).getDoubleV()) ? 0 : 1;
            }
        }
        return samples;
    }

    @Override
    public void close() throws Exception {
        if (reader != null) {
            reader.close();
        }
    }
}
