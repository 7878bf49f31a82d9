package settlemark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

final class DocumentTest {
    private final List<Problem> problems = new ArrayList<>();

    private Optional<Document> read(String text) {
        return Document.read("d.yaml", text.getBytes(StandardCharsets.UTF_8), DocumentLimits.DEFAULT, problems);
    }

    private JsonNode value(String scalar) {
        JsonNode node = read("v: " + scalar + "\n").orElseThrow().root().get("v");
        assertThat(problems).isEmpty();
        return node;
    }

    /** YAML 1.2.2, section 10.3.2, tag resolution of the core schema. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            no    | STRING  | no
            yes   | STRING  | yes
            on    | STRING  | on
            012   | NUMBER  | 12
            0x1F  | NUMBER  | 31
            0o17  | NUMBER  | 15
            1_000 | STRING  | 1_000
            12:30 | STRING  | 12:30
            1e3   | NUMBER  | 1000.0
            -.5   | NUMBER  | -0.5
            0,1   | STRING  | 0,1
            true  | BOOLEAN | true
            False | BOOLEAN | false
            "3"   | STRING  | 3
            'no'  | STRING  | no
            2026-01-01 | STRING | 2026-01-01
            0xFFFFFFFFFFFFFFFF | NUMBER | 18446744073709551615
            """)
    void plainScalarsFollowTheCoreSchema(String scalar, String type, String text) {
        JsonNode node = value(scalar);
        assertThat(node.getNodeType()).hasToString(type);
        assertThat(node.asString()).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            '',              1, 1
            /a,              1, 4
            /list/0,         3, 5
            /list/1/x,       4, 8
            /list/1/y,       5, 8
            /flow/b,         6, 17
            /list/1/unknown, 4, 5
            /nothing,        1, 1
            """)
    void everyValueHasItsLineAndColumn(String pointer, int line, int column) {
        Document document = read("""
                a: 1
                list:
                  - first
                  - x: 2
                    y: 3
                flow: {a: 1, b: 2}
                """).orElseThrow();
        assertThat(document.line(pointer == null ? "" : pointer)).isEqualTo(line);
        assertThat(document.column(pointer == null ? "" : pointer)).isEqualTo(column);
    }

    /** What is wrong with a text, and where. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            ~a: 1\\nb: 2\\na: 3\\n~   | d.yaml:3:1: key "a" stands twice, first in line 1; keep one
            ~a: &x 1\\nb: *x\\n~      | d.yaml:2:4: alias *x is not supported here; write the value out, or quote it if it is text
            ~a: !!str 1\\n~           | d.yaml:1:4: tag tag:yaml.org,2002:str is not supported; quote the value if it is text
            ~a: .nan\\n~              | d.yaml:1:4: .nan is not a number that can be used here; quote it if it is text
            ~a: 1e999\\n~             | d.yaml:1:4: number 1e999 is too large; quote it if it is text
            ~a: 1\\n---\\nb: 2\\n~    | d.yaml:2:1: a second document starts here; one file holds one document
            ~? [x]\\n: 1\\n~          | d.yaml:1:3: a key must be plain text
            ~~                        | d.yaml:1:1: the document is empty
            ~# nothing\\n~            | d.yaml:1:1: the document is empty
            ~a: [1\\nb: 2\\n~         | d.yaml:2:2: not YAML: expected ',' or ']', but got : (a bracket is not closed)
            ~a: 1\\n b: 2\\n~         | d.yaml:2:3: not YAML: mapping values are not allowed here (check the indentation, and quote text that holds a colon)
            ~a:\\n\\t- b\\n~          | d.yaml:2:1: not YAML: found character '\\t(TAB)' that cannot start any token. (Do not use \\t(TAB) for indentation)
            ~a: @x\\n~                | d.yaml:1:4: not YAML: found character '@' that cannot start any token. (Do not use @ for indentation) (quote the text)
            ~a: 'x\\n~                | d.yaml:2:1: not YAML: found unexpected end of stream (a quote is not closed)
            """)
    void saysWhatIsWrongWithTheText(String escaped, String expected) {
        String text = escaped == null ? "" : escaped.replace("\\n", "\n").replace("\\t", "\t");
        read(text);
        assertThat(problems).extracting(Problem::toString).containsExactly(expected);
    }

    @Test
    void aControlCharacterIsFoundAtItsPlace() {
        assertThat(read("b: 2\na: \u0007\n")).isEmpty();
        assertThat(problems)
                .extracting(Problem::toString)
                .containsExactly("d.yaml:2:4: control character U+0007 is not allowed; is this the right file?");
    }

    @Test
    void bytesThatAreNotUtf8AreFoundAtTheirPlace() {
        byte[] text = "a: 1\nb\u00e9: \u00b0\n".getBytes(StandardCharsets.UTF_8);
        text[9] = (byte) 0xB0; // the second half of the degree sign stands alone now
        assertThat(Document.read("d.yaml", text, DocumentLimits.DEFAULT, problems))
                .isEmpty();
        assertThat(problems)
                .extracting(Problem::toString)
                .containsExactly("d.yaml:2:4: byte 0xB0 is not UTF-8 text; save the file with the encoding UTF-8");
    }

    @Test
    void aByteOrderMarkIsNoPartOfTheText() {
        assertThat(read("\uFEFFa: 1\n").orElseThrow().root().get("a").asInt()).isEqualTo(1);
    }

    @Test
    void jsonIsReadAsTheYamlThatItIs() {
        Document document = read("{\n\t\"a\": [1, true, null],\n\t\"b\\u00e9\\/\": \"x\"\n}\n")
                .orElseThrow();
        assertThat(document.root()).hasToString("{\"a\":[1,true,null],\"b\u00e9/\":\"x\"}");
        assertThat(document.line("/a/1")).isEqualTo(2);
        assertThat(document.line("/b\u00e9~1")).isEqualTo(3);
    }

    @Test
    void moreBytesThanAllowedAreRefusedUnread() {
        byte[] text = new byte[(1 << 20) + 1];
        assertThat(Document.read("d.yaml", text, DocumentLimits.DEFAULT, problems))
                .isEmpty();
        assertThat(problems)
                .singleElement()
                .satisfies(p -> assertThat(p.message())
                        .isEqualTo(
                                "the document has 1048577 bytes, at most 1048576 are read; is this the right file?"));
    }

    @Test
    void twentyLevelsAreReadAndNotOneMore() {
        String deep = "[".repeat(19) + "1" + "]".repeat(19);
        assertThat(read(deep)).isPresent();
        assertThat(problems).isEmpty();
        assertThat(read("[" + deep + "]")).isEmpty();
        assertThat(problems)
                .extracting(Problem::toString)
                .containsExactly("d.yaml:1:21: nested more than 20 levels deep");
    }

    @Test
    void nestingWithoutEndIsRefusedEarly() {
        assertThat(read("[".repeat(500_000))).isEmpty();
        assertThat(problems)
                .singleElement()
                .satisfies(p -> assertThat(p.message()).contains("20 levels"));
    }

    @Test
    void moreValuesThanAllowedAreRefused() {
        assertThat(read("[" + "1,".repeat(100_000) + "]")).isEmpty();
        assertThat(problems)
                .singleElement()
                .satisfies(p -> assertThat(p.message()).isEqualTo("the document has more than 100000 values"));
    }

    @Test
    void aNumberOfAThousandDigitsIsRefused() {
        read("a: " + "7".repeat(1000) + "\n");
        assertThat(problems)
                .extracting(Problem::toString)
                .containsExactly("d.yaml:1:4: a number of 1000 characters; at most 64 are read");
    }

    @Test
    void problemsSortByPlaceAndWarningsSaySo() {
        Problem later = new Problem("d.yaml", 2, 1, Severity.ERROR, "second");
        Problem warning = new Problem("d.yaml", 1, 9, Severity.WARNING, "first");
        assertThat(List.of(later, warning).stream().sorted()).containsExactly(warning, later);
        assertThat(warning).hasToString("d.yaml:1:9: warning: first");
        assertThat(later).hasToString("d.yaml:2:1: second");
    }
}
