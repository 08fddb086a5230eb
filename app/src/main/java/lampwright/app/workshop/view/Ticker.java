package lampwright.app.workshop.view;

import java.util.function.LongConsumer;
import javafx.animation.AnimationTimer;
import javafx.beans.value.ObservableBooleanValue;

/** Tells the time at each frame of the screen, while something plays. */
public final class Ticker {
  private Ticker() {}

  /**
   * Begins and ends with what plays, for as long as that is there.
   *
   * @param tick takes the time, ns, by a clock that only goes forward
   */
  public static void run(ObservableBooleanValue playing, LongConsumer tick) {
    AnimationTimer timer =
        new AnimationTimer() {
          @Override
          public void handle(long now) {
            tick.accept(now);
          }
        };
    playing.addListener(
        (of, before, now) -> {
          if (now) {
            timer.start();
          } else {
            timer.stop();
          }
        });
  }
}
