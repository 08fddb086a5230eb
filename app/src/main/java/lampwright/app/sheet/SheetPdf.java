package lampwright.app.sheet;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.logging.Level;
import java.util.logging.Logger;
import lampwright.exporters.sheet.BuildSheet;
import lampwright.exporters.sheet.SheetHtml;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;

/** The build sheet as PDF, from the very HTML, with its fonts in it. */
final class SheetPdf {
  /** A file is told from others by this number; the same for all, as none is changed later. */
  private static final long DOCUMENT_ID = 1;

  private static final String STYLE =
      "@page { @bottom-right { content: counter(page) ' / ' counter(pages);"
          + " font-family: sheet; font-size: 7pt; } }\n"
          + "body { font-family: "
          + SheetFonts.FAMILIES
          + "; font-size: 8.5pt; }\n"
          + "table.long { -fs-table-paginate: paginate; }\n";

  // Held here, since a logger that nobody holds forgets its level.
  private static final Logger LIBRARY = Logger.getLogger("org.apache");

  private SheetPdf() {}

  /** The bytes of the document: the same for the same sheet. */
  static byte[] of(BuildSheet sheet) throws IOException {
    XRLog.setLoggingEnabled(false);
    LIBRARY.setLevel(Level.OFF);
    String html = SheetHtml.write(sheet, STYLE);
    SheetFonts fonts = SheetFonts.of(html);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      PdfRendererBuilder builder = new PdfRendererBuilder().usePDDocument(document);
      fonts.register(builder, document);
      builder
          .withHtmlContent(fonts.shown(html), null)
          .useSVGDrawer(new TraceDrawer())
          .useUnicodeBidiSplitter(BidiText::new)
          .useUnicodeBidiReorderer(new BidiText.Reorderer())
          // Nothing is fetched, whatever a name says.
          .useUriResolver((base, uri) -> null)
          .withProducer("Lampwright");
      try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
        renderer.createPDFWithoutClosing();
        document.getDocumentInformation().getCOSObject().removeItem(COSName.CREATION_DATE);
        document.setDocumentId(DOCUMENT_ID);
        document.save(bytes);
      }
    }
    return bytes.toByteArray();
  }
}
