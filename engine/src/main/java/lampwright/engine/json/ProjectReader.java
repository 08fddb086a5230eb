package lampwright.engine.json;

import com.google.common.util.concurrent.Uninterruptibles;
import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.check.Fault;
import lampwright.engine.document.Project;
import lampwright.engine.document.ProjectFaults;
import lampwright.engine.field.Draft;
import lampwright.engine.rig.PixelType;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.SituationFaults;

/** Reads project files and finds every problem in them. */
public final class ProjectReader {

  /** The largest file that is read: 64 MiB. */
  public static final int MAX_BYTES = 64 << 20;

  /**
   * What describes projects takes as long to set up as the first text to parse: each has a thread.
   * Threads that initialize classes which need each other may wait for each other for good; parsing
   * shares nothing with projects but {@code check}, which needs nothing of either.
   */
  private static final class Description {
    static final Thread BEGUN = begin();

    private static Thread begin() {
      Thread thread = new Thread(ProjectReader::describe, "project description");
      thread.setDaemon(true);
      thread.start();
      return thread;
    }
  }

  private ProjectReader() {}

  private static void describe() {
    try {
      MethodHandles.lookup().ensureInitialized(Project.class);
    } catch (IllegalAccessException notPublic) {
      throw new IllegalStateException(notPublic);
    }
  }

  /**
   * Reads a project file.
   *
   * @return the project, or the problems of the file
   * @throws IOException if the file cannot be read; its message names the file and says why
   */
  public static ReadResult read(Path file) throws IOException {
    byte[] bytes = ProjectFiles.contents(file);
    return bytes.length > MAX_BYTES
        ? tooLarge(file.toString(), Math.max(bytes.length, Files.size(file)))
        : read(file.toString(), bytes);
  }

  /**
   * Reads the bytes of a project file.
   *
   * @param sourceName the file's name, for messages
   */
  public static ReadResult read(String sourceName, byte[] bytes) {
    if (bytes.length > MAX_BYTES) {
      return tooLarge(sourceName, bytes.length);
    }
    Problems problems = new Problems();
    Thread describing = Description.BEGUN;
    Optional<Json> json = JsonTree.parse(bytes, problems);
    Uninterruptibles.joinUninterruptibly(describing);
    if (json.isEmpty()) {
      return refused(sourceName, problems);
    }
    Optional<Problems> newer = FileVersion.newer(json.get());
    if (newer.isPresent()) {
      return refused(sourceName, newer.get());
    }
    Optional<Project> project = project(new Located(json.get(), Where.ROOT, problems));
    return new ReadResult(
        sourceName,
        problems.anyError() ? Optional.empty() : project,
        problems.listed(),
        problems.unlisted(),
        Positions.of(json.get()));
  }

  private static Optional<Project> project(Located at) {
    ShapeReader reader = new ShapeReader();
    Fields f = at.fields();
    FileVersion.check(f);
    f.expect(Project.SHAPE.names());
    Names typeNames = new Names();
    PixelTypeReader typeReader = new PixelTypeReader(reader, typeNames);
    List<PixelType> types = RigReader.members(f, Project.PIXEL_TYPES, typeReader::read);
    RigReader.Result rig = rig(f, new RigReader(reader, types, typeNames));
    Names sceneNames = new Names();
    SceneReader sceneReader = new SceneReader(reader, sceneNames, rig.lampNames());
    List<Scene> scenes = RigReader.members(f, Project.SCENES, sceneReader::read);
    Names situationNames = new Names();
    SituationReader situationReader = new SituationReader(reader, situationNames);
    List<Situation> situations = RigReader.members(f, Project.SITUATIONS, situationReader::read);
    Draft<Project> draft =
        Project.SHAPE
            .draft()
            .set(Project.PIXEL_TYPES, types)
            .set(Project.SCENES, scenes)
            .set(Project.SITUATIONS, situations);
    draft.set(Project.RIG, rig.rig().orElseGet(() -> draft.get(Project.RIG)));
    reader.fill(Project.SHAPE, f, draft);
    f.close();
    // Its own fields are checked here; the project is made of what is sound alone.
    Project.SHAPE.check(draft).faults().forEach(fault -> f.report(fault, References.NONE));
    PartReferences references =
        new PartReferences(rig.lampNames(), rig.inputNames(), sceneNames, situationNames);
    for (Fault fault :
        ProjectFaults.find(types, rig.chains(), rig.lamps(), draft.get(Project.PICTURES), scenes)) {
      f.report(fault, references);
    }
    SituationFaults.find(rig.inputs(), scenes, situations)
        .forEach(fault -> f.report(fault, references));
    ProjectFaults.ofPresets(draft.get(Project.PRESETS))
        .forEach(fault -> f.report(fault, References.NONE));
    return at.problems().anyError() ? Optional.empty() : Optional.of(draft.make());
  }

  private static RigReader.Result rig(Fields f, RigReader reader) {
    Optional<Located> at = f.find("rig");
    if (at.isEmpty()) {
      f.missing("rig", ValueKind.OBJECT.allowed());
      return RigReader.Result.missing();
    }
    return reader.read(at.get());
  }

  private static ReadResult tooLarge(String sourceName, long size) {
    Problems problems = new Problems();
    problems.error(
        Where.ROOT,
        1,
        1,
        "a file of " + Checks.limit(size) + " bytes",
        "must be at most " + Checks.limit(MAX_BYTES) + " bytes");
    return refused(sourceName, problems);
  }

  private static ReadResult refused(String sourceName, Problems problems) {
    return new ReadResult(sourceName, problems.listed(), problems.unlisted());
  }
}
