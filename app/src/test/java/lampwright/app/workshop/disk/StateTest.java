package lampwright.app.workshop.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.disk.Owner;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StateTest {
  @TempDir Path folder;

  private static Path state(Map<String, String> properties, Map<String, String> environment) {
    return StateFolder.of(properties::get, environment::get);
  }

  // XDG Base Directory Specification 0.8: $XDG_STATE_HOME, else $HOME/.local/state; relative paths
  // are ignored.
  @Test
  void stateFolderIsWhereTheSystemWantsIt() {
    Map<String, String> linux = Map.of("os.name", "Linux", "user.home", "/home/ann");
    assertThat(state(linux, Map.of())).isEqualTo(Path.of("/home/ann/.local/state/lampwright"));
    assertThat(state(linux, Map.of("XDG_STATE_HOME", "/s"))).isEqualTo(Path.of("/s/lampwright"));
    assertThat(state(linux, Map.of("XDG_STATE_HOME", "s")))
        .isEqualTo(Path.of("/home/ann/.local/state/lampwright"));
    assertThat(state(Map.of("os.name", "Mac OS X", "user.home", "/Users/ann"), Map.of()))
        .isEqualTo(Path.of("/Users/ann/Library/Application Support/Lampwright"));
    assertThat(
            state(Map.of("os.name", "Windows 11", "user.home", "/u"), Map.of("LOCALAPPDATA", "/l")))
        .isEqualTo(Path.of("/l/Lampwright"));
    assertThat(state(Map.of("lampwright.state", "/t"), Map.of())).isEqualTo(Path.of("/t"));
  }

  @Test
  void windowStateIsReadAsItWasWritten() throws IOException {
    WindowStates states = new WindowStates(folder.resolve("new"));
    assertThat(states.read()).isEqualTo(WindowState.FIRST);
    WindowState state =
        new WindowState(
            Optional.of(new WindowState.Frame(-5, 7.5, 1200, 800)),
            true,
            List.of(0.25, 0.7),
            false,
            View.TOP,
            new WindowState.Rows(14.5, "LARGE", List.of("Roof = left\n#1", "Dach ü")));
    states.write(state);
    assertThat(states.read()).isEqualTo(state);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "frame=1 2 3",
        "frame=0 0 NaN 300",
        "frame=0 0 10 10",
        "dividers=2",
        "dividers=x",
        "titles=-1",
        "titles=NaN",
        "folded=%zz",
        "frame=\\u00zz"
      })
  void senselessWindowStateIsRefused(String text) throws IOException {
    Files.writeString(folder.resolve("window.properties"), text);
    WindowStates states = new WindowStates(folder);
    assertThatThrownBy(states::read).isInstanceOf(IOException.class);
  }

  @Test
  void recoveryIsReadAsItWasWrittenAndEveryCutIsFound() {
    Recovery recovery =
        new Recovery(
            Optional.of(folder.resolve("a b%\u00fc.lampwright.json")),
            Optional.of("ab12"),
            new Owner(7, Instant.ofEpochMilli(1_700_000_000_123L)),
            Instant.ofEpochSecond(1_700_000_100),
            "{\n\n}\n");
    String text = recovery.write();
    assertThat(Recovery.read(text)).contains(recovery);
    for (int end = 0; end < text.length(); end++) {
      assertThat(Recovery.read(text.substring(0, end))).isEmpty();
    }
  }

  @Test
  void listOfLastFilesSkipsWhatIsNone() throws IOException {
    Files.writeString(folder.resolve("recent"), "file:///a/b\n\nno uri %\nhttp://x/y\n");
    assertThat(new RecentFiles(folder).read()).containsExactly(Path.of("/a/b"));
  }
}
