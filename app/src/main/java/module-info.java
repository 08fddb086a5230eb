/** The command line of Lampwright. */
module lampwright.app {
  requires atlantafx.base;
  requires com.fazecast.jSerialComm;
  requires info.picocli;
  requires javafx.controls;
  requires lampwright.engine;
  requires lampwright.exporters;
  requires tools.jackson.core;
  requires com.google.common;
  requires java.desktop;
  requires java.logging;
  requires java.xml;
  // PDFBox asks for it, and has no description of a module that says so.
  requires org.apache.commons.logging;
  requires openhtmltopdf.core;
  requires openhtmltopdf.pdfbox;
  requires org.apache.fontbox;
  requires org.apache.pdfbox;
  requires org.apache.pdfbox.io;
  requires org.commonmark;
  requires org.commonmark.ext.gfm.tables;
  requires static org.jspecify;

  opens lampwright.app.command to
      info.picocli;

  // JavaFX makes the application from its class.
  exports lampwright.app.workshop.view to
      javafx.graphics;
}
