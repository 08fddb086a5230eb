package lampwright.app.workshop.view.drawing;

import java.util.List;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.util.StringConverter;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.view.SteadyLabel;
import lampwright.app.workshop.view.Ticker;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.scene.Scene;
import org.jspecify.annotations.Nullable;

/** Playing: buttons, pace, and where in the scene it is. */
public final class TransportBar extends HBox {
  private final Texts texts = Texts.of("drawing");

  public TransportBar(Bench bench, Playhead playhead, Player player) {
    getStyleClass().add("transport");
    setSpacing(4);
    setAlignment(Pos.CENTER_LEFT);
    Button start = button("toStart", "|◂");
    start.setOnAction(event -> player.toStart());
    Button back = button("back", "◂");
    back.setOnAction(event -> player.step(-1));
    Button play = button("play", "▶");
    play.setOnAction(event -> player.toggle());
    player
        .playingProperty()
        .addListener(
            (of, before, now) -> {
              play.setText(now ? "||" : "▶");
              play.setAccessibleText(texts.get(now ? "pause" : "play"));
            });
    Button forward = button("forward", "▸");
    forward.setOnAction(event -> player.step(1));
    Button end = button("toEnd", "▸|");
    end.setOnAction(event -> player.toEnd());
    ToggleButton loop = new ToggleButton(texts.get("loop"));
    loop.setId("loop");
    loop.getStyleClass().add("small-toggle");
    loop.selectedProperty().bindBidirectional(player.loopingProperty());
    ComboBox<Player.Pace> pace = new ComboBox<>();
    pace.setId("pace");
    pace.getItems().setAll(List.of(Player.Pace.values()));
    pace.setAccessibleText(texts.get("pace"));
    pace.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(Player.@Nullable Pace value) {
            return value == null ? "" : texts.get("pace." + value.name());
          }

          @Override
          public Player.@Nullable Pace fromString(String text) {
            return null;
          }
        });
    pace.valueProperty().bindBidirectional(player.paceProperty());
    Label time = new SteadyLabel();
    time.setId("time");
    time.getStyleClass().add("transport-time");
    Runnable show =
        () -> time.setText(bench.scene().map(scene -> time(scene, playhead.frame())).orElse(""));
    bench.watch(state -> state, (before, now) -> show.run());
    show.run();
    Label dimmed = new Label("◐ " + texts.get("dimmed"));
    dimmed.setId("dimmed");
    dimmed.getStyleClass().add("transport-dimmed");
    Tooltip why = new Tooltip(texts.get("dimmed.hint"));
    why.setWrapText(true);
    why.setMaxWidth(420);
    dimmed.setTooltip(why);
    dimmed.visibleProperty().bind(player.dimmedProperty());
    getChildren().setAll(start, back, play, forward, end, loop, pace, time, dimmed);
    Ticker.run(player.playingProperty(), player::tick);
  }

  private Button button(String key, String sign) {
    Button button = new Button(sign);
    button.setId(key);
    button.setAccessibleText(texts.get(key));
    button.setTooltip(new Tooltip(texts.get(key)));
    button.getStyleClass().add("transport-button");
    return button;
  }

  private String time(Scene scene, int frame) {
    double seconds = frame / scene.framesPerSecond().doubleValue();
    return texts.get(
        "time",
        String.format(Locale.ROOT, "%.3f\u00a0s", seconds),
        Integer.toString(frame),
        Integer.toString(scene.frameCount()));
  }
}
