package lampwright.app.workshop.view.ribbon;

import java.util.Optional;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.input.MouseEvent;
import lampwright.app.workshop.edit.CuePhases;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.LampSigns.Sign;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonSigns;
import lampwright.app.workshop.model.ribbon.RibbonWords;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.app.workshop.view.CommandPopup;
import lampwright.app.workshop.view.PixelTip;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.scene.Cue;

/** What is under the pointer, in words, and the key for it. */
final class RibbonHints {
  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final RibbonWords words;
  private final CommandPopup popup;

  /**
   * @param popup knows the keys
   */
  RibbonHints(RibbonsModel model, CommandPopup popup) {
    this.model = model;
    this.words = new RibbonWords(model.bench());
    this.popup = popup;
  }

  /** On the rows, where the pixel under the pointer is explained as well. */
  void installRows(Node rows) {
    PixelTip.install(
        rows,
        model.explainer(),
        event -> new PixelTip.Pointed(handle(event), model.spot(event.getX(), event.getY())));
  }

  /** Shows words on a node, by where the pointer is on it; none where they are empty. */
  void install(Node node, Function<MouseEvent, String> words) {
    PixelTip.install(node, model.explainer(), event -> new PixelTip.Pointed(words.apply(event)));
  }

  String title(MouseEvent event, double width) {
    Optional<Sign> sign = RibbonSigns.at(event.getX(), width);
    if (sign.isPresent()) {
      String id =
          switch (sign.get()) {
            case LOCK -> "lock";
            case MUTE -> "mute";
            case SOLO -> "solo";
          };
      return withKey(texts.get("act." + id), "ribbons.act." + id);
    }
    Optional<RibbonLayout.Heading> heading = model.heading(event.getY());
    if (heading.isPresent()) {
      return withKey(
          texts.get("hint.group", heading.get().group(), words.count(heading.get())),
          "ribbons.act.fold");
    }
    return model
        .hit(0, event.getY())
        .map(
            hit ->
                withKey(
                    texts.get(
                        "hint.lamp",
                        Titles.of(hit.row().lamp()),
                        words.where(hit.row().lamp())
                            + RibbonSigns.words(model.sheet().signs(), hit.row().lamp().id())
                                .transform(s -> s.isEmpty() ? "" : ", " + s)
                            + "\n"
                            + texts.get("act.rename")),
                    "ribbons.act.rename"))
        .orElse("");
  }

  /** Where the pointer is on a strip, and what is said of the cue there. */
  private String handle(MouseEvent event) {
    Optional<RibbonLayout.Hit> hit = model.hit(event.getX(), event.getY());
    Optional<CueRef> ref = hit.flatMap(RibbonLayout.Hit::cue);
    Optional<Cue> cue = ref.flatMap(r -> model.bench().scene().flatMap(r::in));
    if (cue.isEmpty()) {
      return "";
    }
    Cue of = cue.get();
    return switch (hit.orElseThrow().grip()) {
      case FADE_IN -> texts.get("hint.fade.in", of.fadeInMs().toPlainString());
      case FADE_OUT -> texts.get("hint.fade.out", of.fadeOutMs().toPlainString());
      case KEYFRAME -> withKey(texts.get("hint.keyframe"), "ribbons.act.keyframeRemove");
      case BODY, START, END ->
          hit.get().strip() && CuePhases.moves(of)
              ? texts.get("hint.phase", words.summary(of))
              : texts.get(
                  "hint.cue",
                  words.summary(of),
                  TimeAxis.label(of.startMs().doubleValue()),
                  TimeAxis.label(of.endMs().doubleValue()));
    };
  }

  String time(MouseEvent event, double height) {
    return model
        .markerAt(event.getX(), event.getY(), height)
        .map(
            marker ->
                withKey(
                    texts.get(
                        "hint.marker", marker.name(), TimeAxis.label(marker.atMs().doubleValue())),
                    "ribbons.act.markerRename"))
        .orElseGet(() -> texts.get("hint.time"));
  }

  private String withKey(String words, String command) {
    String key = popup.key(command);
    return key.isEmpty() ? words : texts.get("hint.key", words, key);
  }
}
