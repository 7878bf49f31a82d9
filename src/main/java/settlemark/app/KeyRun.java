package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.cli.SessionDesk;
import settlemark.seal.SealException;
import settlemark.seal.SealFiles;
import settlemark.seal.SealKey;

/** What is done to a key for seals. */
final class KeyRun {
    private static final char[] NONE = {};

    private final SessionDesk.Key request;
    private final Path file;
    private final PrintWriter out;
    private final PrintWriter err;

    KeyRun(SessionDesk.Key request, PrintWriter out, PrintWriter err) {
        this.request = request;
        this.file = request.file().orElseGet(() -> Sealing.keyFile(Workspaces.file(request.workspace())));
        this.out = out;
        this.err = err;
    }

    int run() throws IOException {
        boolean there = Files.exists(file);
        if (request.act() == SessionDesk.KeyAct.NEW && there) {
            err.println("settlemark: " + file + " is there already and is never overwritten: seals are checked with it;"
                    + " name another with --file, or move it away and keep it");
            return Program.USAGE;
        }
        if (request.act() != SessionDesk.KeyAct.NEW && !there) {
            err.println("settlemark: there is no key " + file
                    + " yet; the first record makes it, or \"settlemark key new\"");
            return Program.USAGE;
        }
        try {
            switch (request.act()) {
                case SHOW -> {}
                case NEW -> {
                    char[] phrase = request.newPhraseFile().isPresent() ? Phrases.anew(request.newPhraseFile()) : NONE;
                    SealFiles.writeNew(SealKey.create().pem(phrase), file);
                }
                case PROTECT -> protect();
                case UNPROTECT -> SealFiles.replace(key().pem(NONE), file);
            }
            show();
        } catch (SealException e) {
            throw new IOException(e.getMessage(), e);
        }
        return Program.DONE;
    }

    private SealKey key() throws IOException, SealException {
        return SealFiles.key(file, Phrases.of(request.phraseFile()));
    }

    private void protect() throws IOException, SealException {
        SealKey key = key();
        char[] phrase = Phrases.anew(request.newPhraseFile());
        String pem = key.pem(phrase);
        // Read again before the only copy is replaced.
        SealKey.read(pem, phrase);
        SealFiles.replace(pem, file);
    }

    private void show() throws IOException, SealException {
        String pem = SealFiles.pem(file);
        out.println("key " + SealKey.fingerprintIn(pem));
        out.println("file " + file + (SealKey.isProtected(pem) ? ", protected by a pass phrase" : ", not protected"));
        Optional<Path> publicOut = request.publicOut();
        if (publicOut.isPresent()) {
            Files.writeString(
                    publicOut.get(),
                    SealKey.publicPemIn(pem),
                    StandardCharsets.US_ASCII,
                    StandardOpenOption.CREATE_NEW);
            out.println("public key written to " + publicOut.get());
        } else {
            out.print(SealKey.publicPemIn(pem));
        }
        out.flush();
    }
}
