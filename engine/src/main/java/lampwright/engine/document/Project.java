package lampwright.engine.document;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.Field;
import lampwright.engine.field.ListType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.SituationFaults;

/**
 * The saved document: one rig and its scenes.
 *
 * @param schema where the schema of the file is, for editors; kept as it is given
 * @param name for people
 * @param model the kind of model that is drawn where there is no picture
 * @param pixelTypes the project's own, besides the built-in ones; every chain has one of either
 * @param rig what is fitted
 * @param pictures of the model, at most one of each view
 * @param scenes each with an id of its own; they drive lamps of the rig
 * @param situations what calls up the scenes, in order; each may look at those before it
 * @param presets the project's own, no two of one name; they light nothing by themselves
 */
public record Project(
    Optional<String> schema,
    String name,
    Optional<ModelKind> model,
    List<PixelType> pixelTypes,
    Rig rig,
    List<Picture> pictures,
    List<Scene> scenes,
    List<Situation> situations,
    List<Preset> presets) {

  /** The version of the project file that this program knows. */
  public static final int VERSION = 1;

  public static final Field<Project, Optional<String>> SCHEMA =
      Field.optional("$schema", OptionalType.of(new TextType(2000)), Project::schema).as("schema");
  public static final Field<Project, String> NAME =
      Field.usual("name", TextType.NAME, Project::name, "").alwaysWritten();
  public static final Field<Project, Optional<ModelKind>> MODEL =
      Field.optional("model", OptionalType.of(ModelKind.TYPE), Project::model);
  public static final Field<Project, List<PixelType>> PIXEL_TYPES =
      Field.list(
          "pixelTypes",
          new ListType<>(RecordType.of(PixelType.SHAPE), new ListLimit(0, 256, "pixel types")),
          Project::pixelTypes);
  public static final Field<Project, Rig> RIG =
      Field.required(
          "rig",
          RecordType.of(Rig.SHAPE),
          Project::rig,
          Rig.of(List.of(), List.of(DriverOutput.of("none")), List.of()));
  public static final Field<Project, List<Picture>> PICTURES =
      Field.list(
          "pictures",
          new ListType<>(
              RecordType.of(Picture.SHAPE), new ListLimit(0, View.values().length, "pictures")),
          Project::pictures);
  public static final Field<Project, List<Scene>> SCENES =
      Field.list(
          "scenes",
          new ListType<>(RecordType.of(Scene.SHAPE), new ListLimit(0, 1000, "scenes")),
          Project::scenes);
  public static final Field<Project, List<Situation>> SITUATIONS =
      Field.list(
          "situations",
          new ListType<>(RecordType.of(Situation.SHAPE), new ListLimit(0, 64, "situations")),
          Project::situations);
  public static final Field<Project, List<Preset>> PRESETS =
      Field.list(
          "presets",
          new ListType<>(RecordType.of(Preset.SHAPE), new ListLimit(0, Preset.MAX, "presets")),
          Project::presets);

  public static final Shape<Project> SHAPE =
      Shape.of(
          "project",
          Project.class,
          SCHEMA,
          NAME,
          MODEL,
          PIXEL_TYPES,
          RIG,
          PICTURES,
          SCENES,
          SITUATIONS,
          PRESETS);

  public Project {
    pixelTypes = List.copyOf(pixelTypes);
    pictures = List.copyOf(pictures);
    scenes = List.copyOf(scenes);
    situations = List.copyOf(situations);
    presets = List.copyOf(presets);
    Checks.of("project")
        .addAll(
            SHAPE
                .check(schema, name, model, pixelTypes, rig, pictures, scenes, situations, presets)
                .faults())
        .addAll(ProjectFaults.find(pixelTypes, rig.chains(), rig.lamps(), pictures, scenes))
        .addAll(SituationFaults.find(rig.inputs(), scenes, situations))
        .addAll(ProjectFaults.ofPresets(presets))
        .done();
  }

  /** A project of this rig and these scenes. */
  public static Project of(String name, Rig rig, Scene... scenes) {
    return SHAPE.draft().set(NAME, name).set(RIG, rig).set(SCENES, List.of(scenes)).make();
  }

  /** The picture of a view, if there is one. */
  public Optional<Picture> picture(View view) {
    return pictures.stream().filter(p -> p.view() == view).findFirst();
  }

  /** The scene with this id. */
  public Optional<Scene> scene(String id) {
    return scenes.stream().filter(s -> s.id().equals(id)).findFirst();
  }
}
