package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.scene.input.KeyCombination;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.command.KeyTable;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.ribbon.MarkerCommands;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All commands, without a window. */
class WorkshopCommandsTest {
  @TempDir static Path state;

  private final SimpleBooleanProperty dark = new SimpleBooleanProperty();
  private WorkshopParts parts;
  private Commands commands;

  @BeforeEach
  void make() {
    parts = new WorkshopParts(new ReadyAnswers(), work -> {}, state, () -> {});
    commands =
        WorkshopCommands.of(
            parts,
            new WorkshopCommands.Window(
                () -> {},
                () -> {},
                new WorkshopCommands.Names(() -> {}, () -> {}, () -> {}),
                new MarkerCommands(parts.ribbons()),
                () -> {},
                () -> {},
                () -> {},
                new WorkshopCommands.Help(page -> {}, () -> {}, () -> {}),
                dark,
                () -> {}));
  }

  @AfterEach
  void close() {
    parts.close();
  }

  @Test
  void everyCommandHasWords() {
    assertThat(commands.all()).hasSizeGreaterThan(40);
    assertThat(commands.all())
        .allSatisfy(
            command -> assertThat(command.words().getValue()).as(command.id()).isNotBlank());
    Set<String> words = new HashSet<>();
    for (CommandMenu menu : CommandMenu.values()) {
      commands.groups(menu).stream()
          .flatMap(List::stream)
          .forEach(c -> assertThat(words.add(menu + c.words().getValue())).as(c.id()).isTrue());
    }
  }

  @Test
  void everyShortcutIsReadAndOfOneCommandAlone() {
    Set<String> taken = new HashSet<>();
    for (Command command : commands.all()) {
      if (!command.shortcut().isEmpty()) {
        String name = KeyCombination.valueOf(command.shortcut()).getName();
        assertThat(taken.add(name)).as("%s of %s", name, command.id()).isTrue();
      }
    }
  }

  @Test
  void everyCommandIsInAMenuOrSaysWhyNot() {
    long listed = 0;
    for (CommandMenu menu : CommandMenu.values()) {
      assertThat(commands.groups(menu)).as("menu %s", menu).isNotEmpty();
      listed += commands.groups(menu).stream().mapToLong(List::size).sum();
    }
    long elsewhere = 0;
    for (Command command : commands.all()) {
      if (command.place() instanceof Command.NoMenu no) {
        assertThat(no.why()).as(command.id()).isNotBlank();
        elsewhere++;
      }
    }
    assertThat(listed + elsewhere).isEqualTo(commands.all().size());
  }

  @Test
  void everyShortcutIsInTheTableOfKeys() {
    KeyTable table = KeyTable.of(commands, keys -> "<" + keys + ">");
    assertThat(commands.all())
        .filteredOn(command -> !command.shortcut().isEmpty())
        .allSatisfy(
            command ->
                assertThat(table.rows())
                    .anySatisfy(
                        row -> {
                          assertThat(row.what()).isEqualTo(command.words().getValue());
                          assertThat(row.keys()).isEqualTo("<" + command.shortcut() + ">");
                        }));
  }

  @Test
  void tableOfKeysIsSearchedByEveryWordInAnyOfItsTexts() {
    KeyTable table = KeyTable.of(commands, keys -> keys);
    assertThat(table.matching("")).isEqualTo(table.rows());
    assertThat(table.matching(" DELETE  drawing "))
        .containsExactly(new KeyTable.Row("Drawing", "Remove the lamp from the drawing", "Delete"));
    assertThat(table.matching("no such key")).isEmpty();
  }

  @Test
  void commandsAreFoundByTheirIds() {
    assertThat(dark.get()).isFalse();
    commands.find("workshop.menu.dark").run().run();
    assertThat(dark.get()).isTrue();
    assertThat(commands.find("files.undo").enabled().get()).isFalse();
    assertThatIllegalArgumentException().isThrownBy(() -> commands.find("files.nothing"));
  }

  @Test
  void twoCommandsWithOneIdOrShortcutAreRefused() {
    Command.Place place = new Command.NoMenu("made for a test");
    Command one = Command.of("files.new", place, () -> {}).withShortcut("Shortcut+N");
    Command other = Command.of("files.open", place, () -> {});
    assertThat(new Commands(List.of(one, other)).all()).containsExactly(one, other);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Commands(List.of(one, one.withShortcut(""))))
        .withMessageContaining("files.new");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Commands(List.of(one, other.withShortcut("Shortcut+N"))))
        .withMessageContaining("Shortcut+N");
  }

  @Test
  void plainShortcutsAreThoseThatTypeText() {
    Command command = Command.of("files.new", new Command.NoMenu("made for a test"), () -> {});
    assertThat(command.plainShortcut()).isFalse();
    assertThat(command.withShortcut("Space").plainShortcut()).isTrue();
    assertThat(command.withShortcut("Shortcut+L").plainShortcut()).isFalse();
    assertThat(command.withShortcut("F1").plainShortcut()).isFalse();
    assertThat(command.withShortcut("F").plainShortcut()).isTrue();
  }
}
