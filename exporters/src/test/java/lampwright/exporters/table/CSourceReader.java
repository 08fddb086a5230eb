package lampwright.exporters.table;

import com.google.common.base.Splitter;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the one array of a C source file, and the names in a header, without a compiler. */
final class CSourceReader {
  private static final Pattern DEFINED = Pattern.compile("(?m)^#define (\\w+)");
  private static final Pattern OBJECT = Pattern.compile("(?m)^(?:extern|static) .*?\\b(lw_\\w+)");

  private CSourceReader() {}

  static byte[] bytes(String source) {
    String values = source.substring(source.indexOf("= {") + 3, source.indexOf("};"));
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (String value : Splitter.on(',').split(values)) {
      if (!value.isBlank()) {
        bytes.write(Integer.decode(value.strip()));
      }
    }
    return bytes.toByteArray();
  }

  /** Every macro, table and function of a header; a macro with two definitions counts once. */
  static List<String> names(String header) {
    List<String> names = new ArrayList<>();
    for (Pattern pattern : List.of(DEFINED, OBJECT)) {
      Matcher found = pattern.matcher(header);
      while (found.find()) {
        names.add(found.group(1));
      }
    }
    return names.stream().distinct().toList();
  }
}
