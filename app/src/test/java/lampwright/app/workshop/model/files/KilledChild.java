package lampwright.app.workshop.model.files;

import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import lampwright.app.workshop.disk.DiskThread;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.engine.disk.Owner;
import lampwright.engine.document.Project;

/** A workshop without a window that edits without end, and says what is safe; to be killed. */
final class KilledChild {
  private final ExecutorService screen = Executors.newSingleThreadExecutor();
  private final Bench bench = new Bench(Projects.fresh());
  private final FilesModel files;
  private int editsASave;
  private int edits;

  private KilledChild(Path state) {
    files =
        new FilesModel(
            new Workplace(
                bench,
                new ReadyAnswers(),
                new DiskThread("disk"),
                new DiskThread("reader"),
                screen,
                state,
                Owner.self()),
            () -> {});
    files
        .autosave()
        .safeProperty()
        .addListener((of, before, now) -> now.ifPresent(p -> System.out.println(p.name())));
  }

  /** Arguments: the state folder, the file, and how many edits come between two saves, or 0. */
  public static void main(String[] arguments) throws InterruptedException {
    KilledChild child = new KilledChild(Path.of(arguments[0]));
    child.editsASave = Integer.parseInt(arguments[2]);
    child.screen.execute(() -> child.files.open(Path.of(arguments[1])));
    while (!child.screen.awaitTermination(5, TimeUnit.MILLISECONDS)) {
      child.screen.execute(child::edit);
    }
  }

  private void edit() {
    if (files.document().file().isPresent()) {
      edits++;
      bench.apply(
          Edit.of("rename", project -> Project.NAME.with(project, Integer.toString(edits))));
      if (editsASave > 0 && edits % editsASave == 0) {
        files.save();
      }
    }
  }
}
