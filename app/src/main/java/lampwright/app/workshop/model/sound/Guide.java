package lampwright.app.workshop.model.sound;

import java.util.Locale;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.sound.SoundClip;
import lampwright.app.workshop.sound.SoundFault.Reason;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.scene.GuideSound;

/**
 * All about the guide sound of the scene on the bench.
 *
 * @param track what it is
 * @param sounding when it is heard
 * @param commands what is done to it
 * @param player of the scene
 */
public record Guide(GuideTrack track, GuidePlayer sounding, GuideCommands commands, Player player)
    implements AutoCloseable {
  @Override
  public void close() {
    sounding.close();
    track.close();
  }

  /** Name of its file, without folders. */
  public String name() {
    String file = track.sound().map(GuideSound::file).orElse("");
    return SafeText.text(file.substring(file.lastIndexOf('/') + 1), SafeText.MAX_MESSAGE);
  }

  /** What is the matter with it, or else how long it is, in a few words. */
  public String state() {
    Texts texts = Texts.of("sound");
    if (track.faultProperty().get().isPresent()) {
      return texts.get("fault." + track.faultProperty().get().get().key());
    }
    if (track.clip().isEmpty()) {
      return texts.get("reading");
    }
    if (track.mutedProperty().get()) {
      return texts.get("muted");
    }
    Player.Pace pace = player.paceProperty().get();
    if (pace != Player.Pace.FULL) {
      return texts.get("silent", Texts.of("drawing").get("pace." + pace.name()));
    }
    return sounding
        .troubleProperty()
        .get()
        .map(reason -> texts.get("fault." + reason.key()))
        .orElseGet(() -> length(track.clip().get()));
  }

  /** What the window's status line says of it; empty if nothing is the matter. */
  public String status() {
    Texts texts = Texts.of("sound");
    if (track.faultProperty().get().isPresent()) {
      return texts.get("status", name(), state());
    }
    return sounding
        .troubleProperty()
        .get()
        .map(
            reason ->
                reason == Reason.NO_DEVICE
                    ? texts.get("status.no_device")
                    : texts.get("status", name(), texts.get("fault." + reason.key())))
        .orElse("");
  }

  private static String length(SoundClip clip) {
    return String.format(Locale.ROOT, "%.2f\u00a0s", clip.lengthMs() / 1000.0);
  }
}
