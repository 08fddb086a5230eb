package lampwright.app;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lampwright.engine.rig.Lamp;

/** Light flows one way: who may import whom. */
@AnalyzeClasses(
    packages = "lampwright",
    importOptions = {ImportOption.DoNotIncludeTests.class, StructureTest.NoTestJars.class})
class StructureTest {
  /** Leaves out the tests of the other modules, which come as jars. */
  static final class NoTestJars implements ImportOption {
    @Override
    public boolean includes(Location location) {
      return !location.contains("-tests.jar");
    }
  }

  /** Packages from the ground up, and which others each may use beside the ground. */
  private static final Map<String, List<String>> PACKAGES = new LinkedHashMap<>();

  /** What makes a tree of a text. */
  private static final String PARSING =
      "(\\[L)?lampwright\\.engine\\.json\\.(JsonTree|OpenJson|Json|Utf8|SyntaxCheck|SyntaxFault"
          + "|Problems|Problem|Position|Where)(\\$.*)?;?";

  private static final List<String> GROUND = List.of("check", "time", "facts", "field", "work");

  static {
    PACKAGES.put("light", List.of());
    PACKAGES.put("rig", List.of("light"));
    PACKAGES.put("pattern", List.of("light"));
    PACKAGES.put("scene", List.of("pattern", "rig", "light"));
    PACKAGES.put("situation", List.of("scene", "rig", "pattern", "light"));
    PACKAGES.put("disk", List.of());
    PACKAGES.put("document", List.of("situation", "scene", "pattern", "rig", "light"));
    PACKAGES.put(
        "json", List.of("document", "disk", "situation", "scene", "pattern", "rig", "light"));
    PACKAGES.put("words", List.of("render", "situation", "scene", "pattern", "rig", "light"));
    PACKAGES.put("render", List.of("scene", "situation", "rig", "pattern", "light"));
    PACKAGES.put("meter", List.of("render", "situation", "scene", "rig", "light"));
    PACKAGES.put(
        "review",
        List.of(
            "meter",
            "render",
            "json",
            "document",
            "situation",
            "scene",
            "pattern",
            "rig",
            "light"));
  }

  /** Packages of the exporters from the ground up, and which others of them each may use. */
  private static final Map<String, List<String>> EXPORTERS = new LinkedHashMap<>();

  static {
    EXPORTERS.put("packed.format", List.of());
    EXPORTERS.put("packed.play", List.of("packed.format"));
    EXPORTERS.put("packed.encode", List.of("packed.play", "packed.format"));
    EXPORTERS.put("picture", List.of());
    EXPORTERS.put("live", List.of());
    EXPORTERS.put("target", List.of("packed.play"));
    EXPORTERS.put("wiring", List.of("target"));
    EXPORTERS.put("sheet", List.of("wiring", "target", "picture"));
    EXPORTERS.put("table", List.of("target"));
    EXPORTERS.put(
        "firmware",
        List.of("target", "live", "table", "packed.encode", "packed.play", "packed.format"));
    EXPORTERS.put("proof.rp2040", List.of());
    EXPORTERS.put(
        "proof",
        List.of(
            "proof.rp2040", "firmware", "target", "packed.encode", "packed.play", "packed.format"));
  }

  @ArchTest static final ArchRule enginePackagesLookOnlyTowardsTheLight = layers();

  private static ArchRule layers() {
    var layers =
        layeredArchitecture()
            .consideringOnlyDependenciesInAnyPackage("lampwright..")
            .layer("exporters")
            .definedBy("lampwright.exporters..")
            .layer("app")
            .definedBy("lampwright.app..")
            .whereLayer("app")
            .mayNotBeAccessedByAnyLayer();
    for (String ground : GROUND) {
      layers = layers.layer(ground).definedBy("lampwright.engine." + ground + "..");
    }
    for (String name : PACKAGES.keySet()) {
      layers = layers.optionalLayer(name).definedBy("lampwright.engine." + name + "..");
    }
    layers = layers.whereLayer("check").mayNotAccessAnyLayer();
    layers = layers.whereLayer("work").mayNotAccessAnyLayer();
    layers = layers.whereLayer("time").mayOnlyAccessLayers("check");
    layers = layers.whereLayer("facts").mayOnlyAccessLayers("check");
    layers = layers.whereLayer("field").mayOnlyAccessLayers("check");
    for (Map.Entry<String, List<String>> each : PACKAGES.entrySet()) {
      layers = layers.whereLayer(each.getKey()).mayOnlyAccessLayers(withGround(each.getValue()));
    }
    return layers.whereLayer("exporters").mayOnlyAccessLayers(withGround(PACKAGES.keySet()));
  }

  private static String[] withGround(Collection<String> names) {
    return Stream.concat(GROUND.stream(), names.stream()).toArray(String[]::new);
  }

  @ArchTest static final ArchRule exportersLookOnlyTowardsTheBytes = exporters();

  private static ArchRule exporters() {
    var layers =
        layeredArchitecture()
            .consideringOnlyDependenciesInAnyPackage("lampwright.exporters..")
            .layer("job")
            .definedBy("lampwright.exporters");
    for (String name : EXPORTERS.keySet()) {
      layers = layers.layer(name).definedBy("lampwright.exporters." + name);
    }
    layers = layers.whereLayer("job").mayNotAccessAnyLayer();
    for (Map.Entry<String, List<String>> each : EXPORTERS.entrySet()) {
      layers =
          layers
              .whereLayer(each.getKey())
              .mayOnlyAccessLayers(
                  Stream.concat(Stream.of("job"), each.getValue().stream()).toArray(String[]::new));
    }
    return layers;
  }

  /** What is in no place of the table above is held by no rule. */
  @ArchTest
  static final ArchRule everyExporterHasItsPlace =
      classes()
          .that()
          .resideInAPackage("lampwright.exporters..")
          .should()
          .resideInAnyPackage(
              Stream.concat(
                      Stream.of("lampwright.exporters"),
                      EXPORTERS.keySet().stream().map(name -> "lampwright.exporters." + name))
                  .toArray(String[]::new));

  @ArchTest
  static final ArchRule enginePackagesAreFreeOfCycles =
      slices().matching("lampwright.engine.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule onlyTheAppKnowsTheScreen =
      noClasses()
          .that()
          .resideOutsideOfPackage("lampwright.app..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("javafx..", "java.awt..", "javax.swing..");

  @ArchTest
  static final ArchRule engineAndExportersKnowJsonOnlyAsProjects =
      noClasses()
          .that()
          .resideOutsideOfPackages("lampwright.engine.json..", "lampwright.app..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("tools.jackson..");

  @ArchTest
  static final ArchRule editsDiskAndExportKnowNoToolkit =
      noClasses()
          .that()
          .resideInAnyPackage(
              "lampwright.app.export..",
              "lampwright.app.live..",
              "lampwright.app.outline..",
              "lampwright.app.picture..",
              "lampwright.app.preset..",
              "lampwright.exporters.picture..",
              "lampwright.app.start..",
              "lampwright.app.workshop.disk..",
              "lampwright.app.workshop.edit..",
              "lampwright.app.workshop.sound..",
              "lampwright.app.workshop.words..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("javafx..");

  /** So that no hostile name is drawn as it is. */
  @ArchTest
  static final ArchRule windowShowsLampsByTheirTitles =
      noClasses()
          .that()
          .resideInAPackage("lampwright.app.workshop..")
          .and()
          .doNotHaveSimpleName("Titles")
          .should()
          .callMethod(Lamp.class, "title");

  @ArchTest
  static final ArchRule workshopModelsKnowNoControlOrWindow =
      noClasses()
          .that()
          .resideInAPackage("lampwright.app.workshop.model..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "javafx.scene..",
              "javafx.stage..",
              "javafx.application..",
              "javafx.animation..",
              "lampwright.app.workshop.view..");

  @ArchTest
  static final ArchRule serialPortsAloneKnowTheirLibrary =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("lampwright.app.live.SerialPorts")
          .and()
          .doNotHaveFullyQualifiedName("lampwright.app.live.SerialPorts$Opened")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fazecast..");

  @ArchTest
  static final ArchRule liveKnowsNoWorkshop =
      noClasses()
          .that()
          .resideInAPackage("lampwright.app.live..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("lampwright.app.workshop..");

  @ArchTest
  static final ArchRule exportAndWorkshopKnowNoCommandLine =
      noClasses()
          .that()
          .resideInAnyPackage(
              "lampwright.app.export..",
              "lampwright.app.live..",
              "lampwright.app.start..",
              "lampwright.app.workshop..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("lampwright.app.command..", "picocli..");

  /**
   * Projects are described on another thread while a text is parsed. Threads that initialize
   * classes which need each other could wait for each other for good.
   */
  @ArchTest
  static final ArchRule parsingSharesChecksAloneWithProjects =
      classes()
          .that()
          .haveNameMatching(PARSING)
          .should()
          .onlyDependOnClassesThat(
              resideOutsideOfPackage("lampwright..")
                  .or(resideInAPackage("lampwright.engine.check.."))
                  .or(nameMatching(PARSING)));
}
