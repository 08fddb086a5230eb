package lampwright.engine.project;

import java.math.BigDecimal;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/**
 * Writes projects as the text of a project file. Equal projects give equal text, and reading it
 * gives an equal project.
 */
public final class ProjectWriter {
  private ProjectWriter() {}

  /** The text of the file, with lines ended by LF, to be stored in UTF-8. */
  public static String write(Project project) {
    Out root =
        new FieldWriter()
            .number("lampwright", ProjectReader.VERSION)
            .text("name", project.name())
            .list("pixelTypes", project.pixelTypes(), RigWriter::pixelType)
            .value("rig", RigWriter.rig(project.rig()))
            .list("pictures", project.pictures(), ProjectWriter::picture)
            .list("scenes", project.scenes(), ProjectWriter::scene)
            .done();
    StringBuilder text = new StringBuilder();
    root.lay(text, 0, Out.COLUMNS);
    return text.append('\n').toString();
  }

  private static Out picture(Picture picture) {
    return new FieldWriter().text("view", picture.view().key()).text("file", picture.file()).done();
  }

  private static Out scene(Scene scene) {
    return new FieldWriter()
        .text("id", scene.id())
        .decimal("lengthMs", scene.lengthMs())
        .decimal("framesPerSecond", scene.framesPerSecond())
        .flag("loop", scene.loop())
        .textUnless(Dither.OFF.key(), "dither", scene.dither().key())
        .list("tracks", scene.tracks(), ProjectWriter::track)
        .done();
  }

  private static Out track(Track track) {
    return new FieldWriter()
        .list("lamps", track.lamps(), id -> new Out.Word(JsonText.quoted(id)))
        .textUnless(Span.EACH.key(), "span", track.span().key())
        .list("cues", track.cues(), ProjectWriter::cue)
        .done();
  }

  private static Out cue(Cue cue) {
    return new FieldWriter()
        .decimal("startMs", cue.startMs())
        .decimal("lengthMs", cue.lengthMs())
        .decimalUnless(BigDecimal.ZERO, "fadeInMs", cue.fadeInMs())
        .decimalUnless(BigDecimal.ZERO, "fadeOutMs", cue.fadeOutMs())
        .textUnless(Blend.COVER.key(), "blend", cue.blend().key())
        .value("pattern", PatternWriter.write(cue.pattern()))
        .done();
  }
}
