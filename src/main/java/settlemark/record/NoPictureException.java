package settlemark.record;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A file that is called a picture and is none that can be read; the message says which and the remedy. */
public final class NoPictureException extends IOException {
    private static final long serialVersionUID = 1;

    NoPictureException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
