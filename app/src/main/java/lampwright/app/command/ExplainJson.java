package lampwright.app.command;

import java.io.PrintWriter;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.render.PixelAccount;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import tools.jackson.core.JsonGenerator;

/**
 * An explanation for other programs; docs/formats.md describes the form. Fields are added, never
 * changed, while its number stays the same.
 */
final class ExplainJson {
  private static final int FORM = 1;

  private ExplainJson() {}

  static void write(Explanation why, Project project, PrintWriter out) {
    PrettyJson.print(out, json -> write(why, project, json));
  }

  private static void write(Explanation why, Project project, JsonGenerator json) {
    json.writeStartObject();
    json.writeNumberProperty("lampwrightExplain", FORM);
    json.writeStringProperty("name", project.name());
    json.writeStringProperty("lamp", why.lamp().id());
    json.writeNumberProperty("pixel", why.pixel());
    json.writeNumberProperty("frame", why.frame());
    json.writeNumberProperty("seconds", why.seconds());
    why.playing().ifPresent(playing -> situation(playing, json));
    why.scene().ifPresent(scene -> json.writeStringProperty("scene", scene.id()));
    why.account()
        .ifPresent(account -> account(account, why.scene().orElseThrow(), why.sent(), json));
    json.writeEndObject();
  }

  private static void situation(Explanation.Playing playing, JsonGenerator json) {
    playing
        .having()
        .ifPresent(
            situation -> {
              json.writeStringProperty("situation", situation.id());
              json.writeNumberProperty("priority", situation.priority());
            });
    playing.began().ifPresent(change -> json.writeNumberProperty("beganAtFrame", change.frame()));
    json.writeArrayPropertyStart("alsoActive");
    playing.below().forEach(other -> json.writeString(other.id()));
    json.writeEndArray();
  }

  private static void account(
      PixelAccount account, Scene scene, List<Integer> sent, JsonGenerator json) {
    json.writeNumberProperty("sceneFrame", account.frame());
    json.writeNumberProperty("sceneMs", account.timeMs());
    json.writeArrayPropertyStart("cues");
    for (PixelAccount.Layer layer : account.layers()) {
      layer(layer, scene, json);
    }
    json.writeEndArray();
    json.writeNumberProperty("brightnessCap", account.brightnessCap());
    json.writeNumberProperty("sceneFactor", account.sceneFactor());
    json.writeNumberProperty("frameFactor", account.frameFactor());
    json.writeArrayPropertyStart("bytes");
    for (int i = 0; i < sent.size(); i++) {
      PixelAccount.ByteStep step = account.bytes().get(i);
      json.writeStartObject();
      step.emitter().ifPresent(emitter -> json.writeStringProperty("emitter", emitter.key()));
      json.writeNumberProperty("at", step.at());
      json.writeNumberProperty("mixed", step.mixed());
      json.writeNumberProperty("felt", step.felt());
      json.writeNumberProperty("capped", step.capped());
      json.writeNumberProperty("carried", step.carried());
      json.writeNumberProperty("duty", step.duty());
      json.writeNumberProperty("sent", sent.get(i));
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void layer(PixelAccount.Layer layer, Scene scene, JsonGenerator json) {
    Cue cue = scene.tracks().get(layer.track()).cues().get(layer.cue());
    json.writeStartObject();
    json.writeNumberProperty("track", layer.track());
    json.writeNumberProperty("cue", layer.cue());
    json.writeStringProperty("pattern", cue.pattern().kind());
    json.writeStringProperty("blend", cue.blend().key());
    json.writeNumberProperty("sinceStartMs", layer.sinceStartMs());
    json.writeBooleanProperty("hidden", layer.isHidden());
    layer
        .period()
        .ifPresent(
            place -> {
              json.writeNumberProperty("periodMs", place.periodMs());
              json.writeNumberProperty("inPeriodMs", place.atMs());
            });
    json.writeNumberProperty("levelLight", layer.levelLight());
    drives("fullColour", layer.fullColour(), json);
    json.writeNumberProperty("faded", layer.faded());
    json.writeNumberProperty("a", layer.a());
    drives("painted", layer.painted(), json);
    drives("under", layer.under(), json);
    drives("result", layer.result(), json);
    json.writeEndObject();
  }

  private static void drives(String name, List<Double> drives, JsonGenerator json) {
    json.writeArrayPropertyStart(name);
    drives.forEach(json::writeNumber);
    json.writeEndArray();
  }
}
