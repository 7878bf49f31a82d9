package settlemark.record;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDTableAttributeObject;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.jspecify.annotations.Nullable;

/**
 * What each thing on the pages is, for programs that speak or reflow them: headings, paragraphs, tables with their heads,
 * figures with a text in their place (ISO 32000-1, 14.7 and 14.8). What is drawn outside every part is decoration.
 */
final class Structure {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final Deque<PDStructureElement> open = new ArrayDeque<>();
    private final Map<Integer, PDParentTreeValue> parents = new TreeMap<>();
    private List<PDStructureElement> onPage = new ArrayList<>();
    private int decorating;

    Structure() {
        PDStructureElement document = new PDStructureElement("Document", root);
        root.appendKid(document);
        open.push(document);
    }

    interface Part {
        void draw() throws IOException;
    }

    /** Draws a part as what it is: {@code H1}, {@code P}, {@code Table} and so on. */
    void in(String type, Part part) throws IOException {
        begin(type);
        part.draw();
        end();
    }

    PDStructureElement begin(String type) {
        PDStructureElement parent = open.element();
        PDStructureElement element = new PDStructureElement(type, parent);
        parent.appendKid(element);
        open.push(element);
        return element;
    }

    /** A cell that says what its row or its column is. */
    void head(boolean ofColumn, Part part) throws IOException {
        PDTableAttributeObject scope = new PDTableAttributeObject();
        scope.setScope(ofColumn ? PDTableAttributeObject.SCOPE_COLUMN : PDTableAttributeObject.SCOPE_ROW);
        begin("TH").addAttribute(scope);
        part.draw();
        end();
    }

    /** A picture within the part at hand. */
    PDStructureElement figure(String inWords) {
        PDStructureElement element = begin("Figure");
        element.setAlternateDescription(Printable.of(inWords));
        end();
        return element;
    }

    void end() {
        open.pop();
    }

    /** What is drawn by it carries no meaning of its own, such as the foot of a page. */
    void decoration(Part part) throws IOException {
        decorating++;
        part.draw();
        decorating--;
    }

    /** What is being drawn, null where it is decoration. */
    @Nullable
    PDStructureElement current() {
        return decorating > 0 || open.size() == 1 ? null : open.element();
    }

    /** Begins marked content on the page that is being put together. */
    void mark(PDPageContentStream out, PDPage page, @Nullable PDStructureElement element) throws IOException {
        if (element == null) {
            out.beginMarkedContent(COSName.ARTIFACT);
            return;
        }
        int number = onPage.size();
        onPage.add(element);
        PDMarkedContentReference reference = new PDMarkedContentReference();
        reference.setMCID(number);
        reference.setPage(page);
        element.appendKid(reference);
        if (element.getPage() == null) {
            element.setPage(page);
        }
        out.beginMarkedContent(COSName.getPDFName(element.getStructureType()), number);
    }

    /** The page is put together. */
    void pageDone(PDPage page) {
        int number = parents.size();
        COSArray elements = new COSArray();
        onPage.forEach(elements::add);
        parents.put(number, new PDParentTreeValue(elements));
        page.setStructParents(number);
        page.getCOSObject().setItem(COSName.getPDFName("Tabs"), COSName.S);
        onPage = new ArrayList<>();
    }

    /** Hands everything to the document. */
    void finish(PDDocument document) {
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        PDViewerPreferences shown = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        shown.setDisplayDocTitle(true);
        document.getDocumentCatalog().setStructureTreeRoot(root);
        document.getDocumentCatalog().setMarkInfo(marked);
        document.getDocumentCatalog().setLanguage("en");
        document.getDocumentCatalog().setViewerPreferences(shown);
    }
}
