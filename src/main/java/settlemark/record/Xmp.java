package settlemark.record;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * What a document says of itself, once more as XMP (ISO 16684-1), as readers that speak it ask for: title, author, language,
 * times, and that it is made by PDF/UA-1 (ISO 14289-1, clause 5).
 */
final class Xmp {
    private static final String PACKET = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/">
            <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about=""
              xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"
              xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
            <dc:description><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:description>
            <dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>
            <dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>
            <xmp:CreatorTool>%s</xmp:CreatorTool>
            <xmp:CreateDate>%s</xmp:CreateDate>
            <xmp:ModifyDate>%s</xmp:ModifyDate>
            <pdf:Producer>%s</pdf:Producer>
            <pdfuaid:part>1</pdfuaid:part>
            </rdf:Description>
            </rdf:RDF>
            </x:xmpmeta>
            <?xpacket end="r"?>""";

    private Xmp() {}

    /** Puts it into the document. */
    static void say(PDDocument document, PDDocumentInformation information) throws IOException {
        String text = PACKET.formatted(
                escaped(information.getTitle()),
                escaped(information.getSubject()),
                escaped(information.getAuthor()),
                escaped(information.getCreator()),
                information.getCreationDate().toInstant(),
                information.getModificationDate().toInstant(),
                escaped(information.getProducer()));
        PDMetadata metadata = new PDMetadata(document, new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        document.getDocumentCatalog().setMetadata(metadata);
    }

    /** A person's words as text within XML; what XML has no character for is left out. */
    private static String escaped(String words) {
        StringBuilder text = new StringBuilder();
        words.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> text.append("&amp;");
                case '<' -> text.append("&lt;");
                case '>' -> text.append("&gt;");
                default -> {
                    if (c >= ' ' && (c < 0xD800 || c > 0xDFFF) && c != 0xFFFE && c != 0xFFFF) {
                        text.appendCodePoint(c);
                    }
                }
            }
        });
        return text.toString();
    }
}
