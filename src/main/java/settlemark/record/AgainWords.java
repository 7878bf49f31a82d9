package settlemark.record;

import java.util.ArrayList;
import java.util.List;
import settlemark.session.JobRecord;

/** That a record is made from bytes that were decoded again, in sentences. */
final class AgainWords {
    private static final int DIGEST_SHOWN = 12;

    private AgainWords() {}

    /** Empty for a record of the day. */
    static List<String> of(JobRecord record) {
        return record.again()
                .map(a -> List.of(sentence(a, new Times(record.header()))))
                .orElse(List.of());
    }

    private static String sentence(JobRecord.Again again, Times times) {
        List<String> profiles = new ArrayList<>();
        for (JobRecord.Instead instead : again.instead()) {
            profiles.add(instead.probe() + " with profile " + instead.profileId() + " (SHA-256 "
                    + shown(instead.digest()) + ") instead of the one of the day (SHA-256 "
                    + shown(instead.formerDigest()) + ")");
        }
        String with = profiles.isEmpty() ? "with the profiles of the day" : String.join("; ", profiles);
        return "The bytes of this session were decoded again on " + times.dayAndMinute(again.madeAt()) + " (rereading "
                + again.number() + "): " + with + ". Every value here comes from that. The readings of the day stay"
                + " stored as they were.";
    }

    private static String shown(String digest) {
        return digest.substring(0, Math.min(DIGEST_SHOWN, digest.length())) + "\u2026";
    }
}
