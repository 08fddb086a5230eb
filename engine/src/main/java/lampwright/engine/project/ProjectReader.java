package lampwright.engine.project;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Fault;
import lampwright.engine.rig.PixelType;
import lampwright.engine.scene.Scene;

/** Reads project files and finds every problem in them. */
public final class ProjectReader {
  /** The version of the project file that this reader knows. */
  public static final int VERSION = 1;

  /** The largest file that is read: 64 MiB. */
  public static final int MAX_BYTES = 64 << 20;

  private static final String VERSION_FIELD = "lampwright";

  private ProjectReader() {}

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
    Optional<Json> json = JsonTree.parse(bytes, problems);
    if (json.isEmpty()) {
      return refused(sourceName, problems);
    }
    if (isNewer(json.get())) {
      return newer(sourceName, json.get());
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
    Fields f = at.fields();
    version(f);
    String name = f.optional("name", ValueKind.TEXT, "");
    Names typeNames = new Names();
    List<PixelType> types =
        f.list("pixelTypes", Project.PIXEL_TYPES).stream()
            .map(t -> PixelTypeReader.read(t, typeNames))
            .toList();
    RigReader.Result rig = rig(f, new RigReader(types, typeNames));
    Optional<List<Picture>> pictures = PictureReader.all(f);
    SceneReader sceneReader = new SceneReader(new Names(), rig.lampNames());
    List<Scene> scenes = f.list("scenes", Project.SCENES).stream().map(sceneReader::read).toList();
    situations(f);
    f.close();
    LampReferences references = new LampReferences(rig.lampNames());
    for (Fault fault :
        ProjectFaults.find(
            name, types, rig.chains(), rig.lamps(), pictures.orElse(List.of()), scenes)) {
      f.report(fault, references);
    }
    if (at.problems().anyError()) {
      return Optional.empty();
    }
    return rig.rig().map(r -> new Project(name, types, r, pictures.orElseThrow(), scenes));
  }

  private static RigReader.Result rig(Fields f, RigReader reader) {
    Optional<Located> at = f.find("rig");
    if (at.isEmpty()) {
      f.missing("rig", ValueKind.OBJECT.allowed());
      return new RigReader.Result(Optional.empty(), List.of(), List.of(), Names.all());
    }
    return reader.read(at.get());
  }

  private static boolean isNewer(Json json) {
    return json instanceof Json.Obj root
        && root.find(VERSION_FIELD).flatMap(ValueKind.WHOLE::read).orElse(0L) > VERSION;
  }

  private static ReadResult newer(String sourceName, Json json) {
    Problems problems = new Problems();
    Json at = ((Json.Obj) json).find(VERSION_FIELD).orElseThrow();
    new Located(at, Where.ROOT.field(VERSION_FIELD), problems)
        .error(at.shown(), "needs " + VERSION + "; this file was written by a newer Lampwright");
    return refused(sourceName, problems);
  }

  private static void version(Fields f) {
    String allowed = "needs " + VERSION;
    long version = f.required(VERSION_FIELD, number(allowed), (long) VERSION);
    if (version != VERSION) {
      f.report(new Fault(VERSION_FIELD, String.valueOf(version), allowed), References.NONE);
    }
  }

  private static ValueKind<Long> number(String allowed) {
    return new ValueKind<>(Json.Num.class, allowed, List.of(), ValueKind.WHOLE::read);
  }

  private static void situations(Fields f) {
    int count = f.optional("situations", ValueKind.LIST, List.of()).size();
    if (count > 0) {
      f.report(
          new Fault(
              "situations",
              count + (count == 1 ? " situation" : " situations"),
              "needs an empty list; situations are not played yet"),
          References.NONE);
    }
  }

  private static ReadResult tooLarge(String sourceName, long size) {
    Problems problems = new Problems();
    problems.error(
        Where.ROOT, 1, 1, "a file of " + size + " bytes", "needs at most " + MAX_BYTES + " bytes");
    return refused(sourceName, problems);
  }

  private static ReadResult refused(String sourceName, Problems problems) {
    return new ReadResult(sourceName, problems.listed(), problems.unlisted());
  }
}
