package lampwright.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import lampwright.engine.rig.Lamp;

/** Light flows one way: who may import whom. */
@AnalyzeClasses(packages = "lampwright", importOptions = ImportOption.DoNotIncludeTests.class)
class StructureTest {
  @ArchTest
  static final ArchRule enginePackagesLookOnlyTowardsTheLight =
      layeredArchitecture()
          .consideringOnlyDependenciesInAnyPackage("lampwright..")
          .layer("facts")
          .definedBy("lampwright.engine.facts..")
          .layer("light")
          .definedBy("lampwright.engine.light..")
          .layer("rig")
          .definedBy("lampwright.engine.rig..")
          .layer("pattern")
          .definedBy("lampwright.engine.pattern..")
          .layer("scene")
          .definedBy("lampwright.engine.scene..")
          .optionalLayer("situation")
          .definedBy("lampwright.engine.situation..")
          .layer("project")
          .definedBy("lampwright.engine.project..")
          .layer("render")
          .definedBy("lampwright.engine.render..")
          .optionalLayer("meter")
          .definedBy("lampwright.engine.meter..")
          .layer("review")
          .definedBy("lampwright.engine.review..")
          .layer("exporters")
          .definedBy("lampwright.exporters..")
          .layer("app")
          .definedBy("lampwright.app..")
          .whereLayer("facts")
          .mayNotAccessAnyLayer()
          .whereLayer("light")
          .mayOnlyAccessLayers("facts")
          .whereLayer("rig")
          .mayOnlyAccessLayers("light", "facts")
          .whereLayer("pattern")
          .mayOnlyAccessLayers("light", "facts")
          .whereLayer("scene")
          .mayOnlyAccessLayers("pattern", "rig", "light", "facts")
          .whereLayer("situation")
          .mayOnlyAccessLayers("scene", "rig", "pattern", "light", "facts")
          .whereLayer("project")
          .mayOnlyAccessLayers("situation", "scene", "pattern", "rig", "light", "facts")
          .whereLayer("render")
          .mayOnlyAccessLayers("scene", "rig", "pattern", "light", "facts")
          .whereLayer("meter")
          .mayOnlyAccessLayers("render", "rig", "light", "facts")
          .whereLayer("review")
          .mayOnlyAccessLayers(
              "meter",
              "render",
              "project",
              "situation",
              "scene",
              "pattern",
              "rig",
              "light",
              "facts")
          .whereLayer("exporters")
          .mayOnlyAccessLayers(
              "review",
              "meter",
              "render",
              "project",
              "situation",
              "scene",
              "pattern",
              "rig",
              "light",
              "facts")
          .whereLayer("app")
          .mayNotBeAccessedByAnyLayer();

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
          .resideOutsideOfPackages("lampwright.engine.project..", "lampwright.app..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("tools.jackson..");

  @ArchTest
  static final ArchRule editsDiskAndExportKnowNoToolkit =
      noClasses()
          .that()
          .resideInAnyPackage(
              "lampwright.app.export..",
              "lampwright.app.workshop.disk..",
              "lampwright.app.workshop.edit..",
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
  static final ArchRule exportAndWorkshopKnowNoCommandLine =
      noClasses()
          .that()
          .resideInAnyPackage("lampwright.app.export..", "lampwright.app.workshop..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("lampwright.app.command..", "picocli..");
}
