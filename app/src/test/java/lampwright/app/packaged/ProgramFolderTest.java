package lampwright.app.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.module.Configuration;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReference;
import java.lang.module.ResolvedModule;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program folder as {@code mvn package} made it; runs in the phase after. */
class ProgramFolderTest {
  private static final Path PROGRAM =
      Path.of(System.getProperty("lampwright.program", "target/lampwright"));

  @TempDir Path folder;

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  /** Jars by their artifact: what stands before the version. */
  private static List<String> libraries() throws IOException {
    return names(PROGRAM.resolve("lib")).stream()
        .map(name -> name.replaceAll("-[0-9].*\\.jar$", ""))
        .toList();
  }

  @Test
  void everyLibraryHasItsLicence() throws IOException {
    List<List<String>> rows =
        Files.readAllLines(PROGRAM.resolve("licences/libraries.csv")).stream()
            .map(line -> List.of(line.split(",", -1)))
            .toList();
    assertThat(rows.get(0)).containsExactly("library", "licence", "text", "source");
    assertThat(rows.stream().skip(1).map(row -> row.get(0)))
        .containsExactlyInAnyOrderElementsOf(libraries());
    for (List<String> row : rows.subList(1, rows.size())) {
      assertThat(PROGRAM.resolve("licences").resolve(row.get(2))).as(row.get(0)).isNotEmptyFile();
    }
  }

  @Test
  void everyFontHasItsLicence() throws IOException {
    List<List<String>> rows =
        Files.readAllLines(PROGRAM.resolve("licences/fonts.csv")).stream()
            .map(line -> List.of(line.split(",", -1)))
            .toList();
    assertThat(rows.get(0)).containsExactly("font", "licence", "text", "source");
    assertThat(rows.stream().skip(1).map(row -> row.get(0)))
        .containsExactlyInAnyOrderElementsOf(
            names(Path.of("src/main/resources/lampwright/app/fonts")).stream()
                .filter(name -> name.endsWith(".ttf"))
                .toList());
    for (List<String> row : rows.subList(1, rows.size())) {
      String words =
          switch (row.get(1)) {
            case "OFL-1.1" -> "SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007";
            case "Bitstream-Vera" -> "Bitstream Vera is a trademark of Bitstream, Inc.";
            case "Apache-2.0" -> "Version 2.0, January 2004";
            default -> "no licence of fonts: " + row.get(1);
          };
      assertThat(Files.readString(PROGRAM.resolve("licences").resolve(row.get(2))))
          .as(row.get(0))
          .containsIgnoringCase("copyright")
          .contains(words);
    }
  }

  @Test
  void textsAreThoseOfTheLicences() throws IOException {
    Path licences = PROGRAM.resolve("licences");
    assertThat(Files.readString(licences.resolve("GPL-2.0-with-Classpath-exception.txt")))
        .contains("Version 2, June 1991", "\"CLASSPATH\" EXCEPTION TO THE GPL");
    assertThat(Files.readString(licences.resolve("Apache-2.0.txt")))
        .contains("Version 2.0, January 2004")
        .isEqualTo(Files.readString(PROGRAM.resolve("LICENSE")));
    assertThat(Files.readString(licences.resolve("MIT-AtlantaFX.txt"))).contains("MIT License");
    assertThat(Files.readString(licences.resolve("LGPL-2.1.txt")))
        .contains("GNU LESSER GENERAL PUBLIC LICENSE", "Version 2.1, February 1999");
    for (String library : List.of("pdfbox", "fontbox")) {
      assertThat(names(licences.resolve(library))).containsExactly("LICENSE", "NOTICE");
    }
    // Of the code of others that jackson-core carries, as its jar has them.
    assertThat(names(licences.resolve("jackson-core")))
        .containsExactly(
            "FastDoubleParser-LICENSE",
            "FastDoubleParser-ThirdParty-LICENSE",
            "NOTICE",
            "Schubfach-LICENSE");
  }

  /** What the module system does not reach from the program is never loaded. */
  @Test
  void everyLibraryIsNeeded() {
    ModuleFinder lib = ModuleFinder.of(PROGRAM.resolve("lib"));
    Configuration reached =
        ModuleLayer.boot()
            .configuration()
            .resolve(lib, ModuleFinder.of(), Set.of("lampwright.app"));
    assertThat(reached.modules().stream().map(ResolvedModule::name).collect(Collectors.toSet()))
        .isEqualTo(
            lib.findAll().stream()
                .map(ModuleReference::descriptor)
                .map(module -> module.name())
                .collect(Collectors.toSet()));
  }

  @Test
  void folderNamesTheSystemOfItsNativeCode() throws IOException {
    List<String> graphics =
        names(PROGRAM.resolve("lib")).stream()
            .filter(n -> n.startsWith("javafx-graphics"))
            .toList();
    assertThat(graphics).hasSize(1);
    String system = graphics.get(0).replaceAll("^javafx-graphics-[0-9.]+-(.*)\\.jar$", "$1");
    assertThat(Files.readString(PROGRAM.resolve("README.txt")))
        .contains("for " + system + " alone")
        .doesNotContain("@");
    assertThat(names(PROGRAM.resolve("bin")))
        .isEqualTo(
            system.equals("win") ? List.of("lampwright", "lampwright.bat") : List.of("lampwright"));
  }

  @Test
  void programRunsFromAnyFolder() throws IOException, InterruptedException {
    Path moved = folder.resolve("a folder with spaces");
    try (Stream<Path> files = Files.walk(PROGRAM)) {
      for (Path file : files.toList()) {
        Path to = moved.resolve(PROGRAM.relativize(file).toString());
        Files.createDirectories(to.getParent());
        Files.copy(file, to, StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    Path sample =
        Path.of("..", "samples", "bench-rgbw.lampwright.json").toAbsolutePath().normalize();
    String project = sample.toString();
    String out = folder.resolve("out").toString();
    for (List<String> words :
        List.of(
            List.of("--version"),
            List.of("pixels"),
            List.of("live", "--list"),
            List.of("check", project, "--json"),
            List.of("measure", project),
            List.of("sheet", project, "--to", out + "/sheet.pdf"),
            List.of("explain", project, "--frame", "0", "--lamp", "all"),
            List.of("export", project, "--to", out, "--as", "c,bin,packed,hex,csv,firmware"))) {
      List<String> command = new ArrayList<>();
      command.add(moved.resolve("bin/lampwright").toString());
      command.addAll(words);
      Path said = folder.resolve("said");
      ProcessBuilder builder =
          new ProcessBuilder(command)
              .directory(folder.toFile())
              .redirectErrorStream(true)
              .redirectOutput(said.toFile());
      builder.environment().put("LAMPWRIGHT_CACHE", "none");
      Process process = builder.start();
      assertThat(process.waitFor()).as(words + ": " + Files.readString(said)).isZero();
    }
  }
}
