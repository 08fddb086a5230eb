package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.engine.disk.Owner;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.json.ProjectReader;

/** A workshop without a window. */
final class Shop {
  final Turns turns;
  final ReadyAnswers dialogs = new ReadyAnswers();
  final Bench bench = new Bench(Projects.fresh());
  final FilesModel files;
  boolean ended;

  Shop(Path state) {
    this(state, Owner.self(), new Turns());
  }

  Shop(Path state, Owner self, Turns turns) {
    this(state, self, turns, turns);
  }

  /**
   * @param reader turns of their own, if a test wants to say when projects are read
   */
  Shop(Path state, Owner self, Turns turns, Turns reader) {
    this.turns = turns;
    files =
        new FilesModel(
            new Workplace(bench, dialogs, turns, reader, turns, state, self), () -> ended = true);
  }

  /** A process that runs no more: one that started before any computer did. */
  static Owner dead() {
    return new Owner(ProcessHandle.current().pid(), Instant.ofEpochSecond(1));
  }

  static Project named(String name) {
    return Project.NAME.with(Projects.fresh(), name);
  }

  static Path saved(Path file, String name) throws IOException {
    ProjectFiles.save(named(name), file);
    return file;
  }

  static Project on(Path file) throws IOException {
    return ProjectReader.read(file).project().orElseThrow();
  }

  void rename(String name) {
    bench.apply(Edit.of("rename", project -> Project.NAME.with(project, name)));
  }

  void open(Path file) {
    files.open(file);
    turns.drain();
  }

  void save() {
    files.save();
    turns.drain();
  }

  String name() {
    return bench.project().name();
  }
}
