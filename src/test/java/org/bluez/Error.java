package org.bluez;

import org.freedesktop.dbus.exceptions.DBusExecutionException;

/** The errors of the Bluetooth service: the bus library makes an error's name from the name of its class. */
public final class Error {
    private Error() {}

    public static final class InProgress extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public InProgress(String words) {
            super(words);
        }
    }

    public static final class NotReady extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public NotReady(String words) {
            super(words);
        }
    }

    public static final class Failed extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public Failed(String words) {
            super(words);
        }
    }

    public static final class NotPermitted extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public NotPermitted(String words) {
            super(words);
        }
    }

    public static final class AuthenticationFailed extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public AuthenticationFailed(String words) {
            super(words);
        }
    }
}
