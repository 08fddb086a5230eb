package lampwright.app.workshop.model.files;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.model.Dialogs;

/** Answers that a test gives beforehand, and what was asked and told. */
public final class ReadyAnswers implements Dialogs {
  public final Deque<String> answers = new ArrayDeque<>();
  public final Deque<Path> files = new ArrayDeque<>();
  public final List<String> asked = new ArrayList<>();
  public final List<String> told = new ArrayList<>();

  @Override
  public int choose(String title, String text, List<String> offered) {
    asked.add(title + "\n" + text);
    if (answers.isEmpty()) {
      throw new AssertionError("not expected: " + title + ": " + text + ": " + offered);
    }
    int index = offered.indexOf(answers.remove());
    if (index < 0) {
      throw new AssertionError("no such answer to " + title + ": " + offered);
    }
    return index;
  }

  @Override
  public Optional<Path> fileToOpen(String title, List<String> patterns) {
    return Optional.ofNullable(files.poll());
  }

  @Override
  public Optional<Path> fileToSave(String title, String suggestedName, List<String> patterns) {
    return Optional.ofNullable(files.poll());
  }

  @Override
  public Optional<Path> folder(String title) {
    return Optional.ofNullable(files.poll());
  }

  @Override
  public void tell(String title, String text) {
    told.add(title + "\n" + text);
  }
}
