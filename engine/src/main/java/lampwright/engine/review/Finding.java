package lampwright.engine.review;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.check.SafeText;
import lampwright.engine.scene.Scene;

/**
 * One thing that check, measure, the workshop or an export has to say about a project. Its words
 * are made from its fields; nothing is ever read back out of them.
 *
 * @param code what kind of finding it is, with its severity and words
 * @param subject the part concerned
 * @param place where it belongs in the project file, if in one place
 * @param moment where it belongs in time, if a scene is concerned
 * @param figures what was measured, the limit and what a remedy needs, by the names that the words
 *     of the code use
 * @param source where the limit comes from; empty if it is the project itself
 */
public record Finding(
    Code code,
    Subject subject,
    Optional<Location> place,
    Optional<Moment> moment,
    ImmutableMap<String, Figure> figures,
    String source) {

  /** Begins a finding. */
  public static Draft of(Code code, Subject subject) {
    return new Draft(code, subject);
  }

  public Severity severity() {
    return code.severity();
  }

  /** The part concerned, in words. */
  public String about() {
    return SafeText.text(subject.words(), SafeText.MAX_MESSAGE);
  }

  /** What is the case, with its figures. */
  public String what() {
    return code.what().fill(figures);
  }

  /** What it is compared with; empty if {@link #what} says it. */
  public String limit() {
    return code.limit().fill(figures);
  }

  /** What a builder can do; empty if there is nothing to do. */
  public String remedy() {
    return code.remedy().fill(figures);
  }

  /** The limit and its source: {@code limit 3 per second (W3C WCAG 2.2, 2.3.1)}. */
  public String limitWithSource() {
    String limit = limit();
    if (source.isEmpty()) {
      return limit;
    }
    return limit.isEmpty() ? source : limit + " (" + source + ")";
  }

  /** The part concerned, and the scene and time if it belongs to one. */
  public String subjectAndTime() {
    // A scene that is the subject is named already.
    boolean named = subject instanceof Subject.OneScene;
    return about() + moment.filter(m -> !named).map(m -> ", " + m.words()).orElse("");
  }

  /** All of it in one line, without severity and place in the file. */
  public String text() {
    StringBuilder text = new StringBuilder(subjectAndTime());
    text.append(": ").append(what());
    if (!limitWithSource().isEmpty()) {
      text.append("; ").append(limitWithSource());
    }
    if (!remedy().isEmpty()) {
      text.append(": ").append(remedy());
    }
    return text.append(" [").append(code.key()).append(']').toString();
  }

  /** The same finding with the position at which its place is in a file. */
  Finding at(Location newPlace) {
    return new Finding(code, subject, Optional.of(newPlace), moment, figures, source);
  }

  /** A finding in the making. */
  public static final class Draft {
    private final Code code;
    private final Subject subject;
    private final Map<String, Figure> figures = new LinkedHashMap<>();
    private Optional<Location> place = Optional.empty();
    private Optional<Moment> moment = Optional.empty();
    private String source = "";

    private Draft(Code code, Subject subject) {
      this.code = code;
      this.subject = subject;
    }

    /** Sets a figure that the code's words name. */
    public Draft with(String name, Figure figure) {
      figures.put(name, figure);
      return this;
    }

    /** Says where it belongs in the project file. */
    public Draft at(String path) {
      place = Optional.of(new Location(path, Optional.empty()));
      return this;
    }

    /** Says which scene it belongs to. */
    public Draft in(Scene scene) {
      moment = Optional.of(moment(scene, OptionalInt.empty()));
      return this;
    }

    /** Says which frame of a scene it is found in, or begins in. */
    public Draft in(Scene scene, int frame) {
      moment = Optional.of(moment(scene, OptionalInt.of(frame)));
      return this;
    }

    /** Says where the limit comes from. */
    public Draft source(String words) {
      source = words;
      return this;
    }

    /**
     * The finding.
     *
     * @throws IllegalStateException if the code's words name a figure that is missing
     */
    public Finding make() {
      code.requireFigures(figures.keySet());
      return new Finding(code, subject, place, moment, ImmutableMap.copyOf(figures), source);
    }

    private static Moment moment(Scene scene, OptionalInt frame) {
      return new Moment(scene.id(), frame, scene.framesPerSecond().doubleValue());
    }
  }
}
