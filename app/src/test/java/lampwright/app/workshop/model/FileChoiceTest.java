package lampwright.app.workshop.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import lampwright.app.workshop.edit.PictureFile;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.files.Turns;
import lampwright.app.workshop.words.Texts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A builder's own picture, from the file that is selected to the path that the project keeps. */
class FileChoiceTest {
  @TempDir Path folder;

  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final Turns turns = new Turns();
  private final List<String> taken = new ArrayList<>();
  private final FileChoice.Kind picture =
      new FileChoice.Kind(
          Texts.of("drawing"),
          "picture",
          List.of("*.png", "*.jpg", "*.jpeg"),
          file -> PictureFile.size(file).isPresent(),
          taken::add);
  private Path models;
  private Path elsewhere;
  private FileChoice choice;

  @BeforeEach
  void folders() throws IOException {
    models = Files.createDirectory(folder.resolve("models"));
    elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
    Optional<Path> project = Optional.of(models.resolve("tug.lampwright.json"));
    choice = new FileChoice(dialogs, () -> project, turns, turns);
  }

  private static Path photo(Path file, int width) throws IOException {
    String name = file.getFileName().toString();
    Files.createDirectories(file.getParent());
    ImageIO.write(
        new BufferedImage(width, 20, BufferedImage.TYPE_INT_RGB),
        name.substring(name.lastIndexOf('.') + 1),
        file.toFile());
    return file;
  }

  private void choose(Path file) {
    dialogs.files.add(file);
    choice.choose(picture);
    turns.drain();
  }

  @Test
  void pictureInTheProjectFolderIsNamedFromThere() throws IOException {
    choose(photo(models.resolve("side.png"), 30));
    choose(photo(models.resolve("photos/rear view.jpg"), 30));
    assertThat(taken).containsExactly("side.png", "photos/rear view.jpg");
    assertThat(dialogs.told).isEmpty();
  }

  @Test
  void pictureFromElsewhereIsCopiedBesideTheProjectIfWanted() throws IOException {
    Path photo = photo(elsewhere.resolve("side.jpg"), 30);
    dialogs.answers.add("Cancel");
    choose(photo);
    assertThat(taken).isEmpty();
    assertThat(models.resolve("side.jpg")).doesNotExist();
    dialogs.answers.add("Copy");
    choose(photo);
    assertThat(taken).containsExactly("side.jpg");
    assertThat(models.resolve("side.jpg")).hasSameBinaryContentAs(photo);
    // The same one again is no other file of that name.
    dialogs.answers.add("Copy");
    choose(photo);
    assertThat(taken).containsExactly("side.jpg", "side.jpg");
    assertThat(dialogs.told).isEmpty();
  }

  @Test
  void copyNeverReplacesAnotherPicture() throws IOException {
    Path there = photo(models.resolve("side.png"), 30);
    byte[] before = Files.readAllBytes(there);
    dialogs.answers.add("Copy");
    choose(photo(elsewhere.resolve("side.png"), 31));
    assertThat(taken).isEmpty();
    assertThat(Files.readAllBytes(there)).isEqualTo(before);
    assertThat(dialogs.told)
        .containsExactly("Picture\nAnother file named side.png is already in the project folder.");
  }

  @Test
  void fileThatIsNoPictureOrTooLargeIsRefusedWithTheLimits() throws IOException {
    Path text = Files.writeString(models.resolve("notes.png"), "no picture at all");
    Path wide = photo(models.resolve("wide.png"), PictureFile.MAX_SIDE + 1);
    Path whole = photo(models.resolve("whole.png"), PictureFile.MAX_SIDE);
    choose(text);
    choose(wide);
    choose(models.resolve("gone.png"));
    String required =
        " cannot be shown. Required: a PNG or JPEG file of at most 64\u00a0MiB and 8,192 pixels per"
            + " side.";
    assertThat(dialogs.told)
        .containsExactly(
            "Picture\nnotes.png" + required,
            "Picture\nwide.png" + required,
            "Picture\ngone.png" + required);
    assertThat(taken).isEmpty();
    choose(whole);
    assertThat(taken).containsExactly("whole.png");
  }

  @Test
  void linkOutOfTheProjectFolderIsRefused() throws IOException {
    Path photo = photo(elsewhere.resolve("side.png"), 30);
    choose(Files.createSymbolicLink(models.resolve("link.png"), photo));
    assertThat(taken).isEmpty();
    assertThat(dialogs.told).hasSize(1);
    assertThat(dialogs.told.get(0)).contains("link").contains("outside");
  }

  @Test
  void projectThatWasNeverSavedHasNoFolderForPictures() {
    new FileChoice(dialogs, Optional::empty, turns, turns).choose(picture);
    assertThat(dialogs.told)
        .containsExactly(
            "Picture\nPictures are stored beside the project file. Save the project first.");
  }

  /** As on the start sheet, where there is no project yet. */
  @Test
  void pictureIsAskedForBeforeThereIsAProject() throws IOException {
    List<Path> asked = new ArrayList<>();
    Path photo = photo(elsewhere.resolve("tug.jpg"), 30);
    dialogs.files.add(photo);
    choice.ask(picture, asked::add);
    turns.drain();
    assertThat(asked).containsExactly(photo);
    dialogs.answers.add("Copy");
    choice.use(picture, photo);
    turns.drain();
    assertThat(taken).containsExactly("tug.jpg");
    dialogs.files.add(elsewhere.resolve("none.jpg"));
    choice.ask(picture, asked::add);
    turns.drain();
    assertThat(asked).hasSize(1);
    assertThat(dialogs.told).hasSize(1);
  }
}
