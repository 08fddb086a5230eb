package lampwright.app.workshop.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.app.workshop.disk.WindowState.Frame;
import org.junit.jupiter.api.Test;

class WindowPlaceTest {
  private static final WindowPlace.Room MAIN = new WindowPlace.Room(0, 30, 1440, 870);

  private static void opens(Frame left, Frame at, WindowPlace.Room... rooms) {
    assertThat(WindowPlace.of(left, List.of(rooms))).contains(at);
  }

  @Test
  void frameWithinItsScreenStaysAsItWas() {
    opens(new Frame(100, 60, 1000, 700), new Frame(100, 60, 1000, 700), MAIN);
    opens(new Frame(0, 30, 1440, 870), new Frame(0, 30, 1440, 870), MAIN);
  }

  /** A window that filled a screen at 100 % is left over the edges of the same screen at 150 %. */
  @Test
  void frameLargerThanItsScreenIsPulledIn() {
    WindowPlace.Room at150 = new WindowPlace.Room(0, 20, 960, 580);
    opens(new Frame(0, 30, 1440, 870), new Frame(0, 20, 960, 580), at150);
  }

  @Test
  void frameOverAnEdgeIsMovedAndKeepsItsSize() {
    opens(new Frame(900, 600, 800, 500), new Frame(640, 400, 800, 500), MAIN);
    opens(new Frame(-300, 0, 800, 500), new Frame(0, 30, 800, 500), MAIN);
  }

  @Test
  void frameGoesToTheScreenThatItCoversMost() {
    WindowPlace.Room right = new WindowPlace.Room(1440, 0, 1000, 800);
    opens(new Frame(1300, 100, 900, 600), new Frame(1440, 100, 900, 600), MAIN, right);
    opens(new Frame(600, 100, 900, 600), new Frame(540, 100, 900, 600), MAIN, right);
  }

  @Test
  void frameOnNoScreenOrATinyOneIsForgotten() {
    assertThat(WindowPlace.of(new Frame(5000, 100, 800, 600), List.of(MAIN))).isEmpty();
    assertThat(WindowPlace.of(new Frame(1440, 100, 800, 600), List.of(MAIN))).isEmpty();
    assertThat(WindowPlace.of(new Frame(0, 0, 800, 600), List.of())).isEmpty();
    assertThat(
            WindowPlace.of(
                new Frame(0, 0, 800, 600), List.of(new WindowPlace.Room(0, 0, 300, 199))))
        .isEmpty();
  }
}
