package lampwright.app.workshop.words;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import lampwright.engine.check.Fault;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Moment;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * Where in a project something is, by the names that its builder gave: {@code Roof beacon, cue at
 * 1.2 s of scene working}. All findings and refusals of the window have their places from here; the
 * command line names paths, lines and columns.
 */
public final class PlaceWords {
  private static final Pattern STEP = Pattern.compile("([A-Za-z]+)(?:\\[(\\d{1,9})])?");
  private static final int LAMPS_NAMED = 2;
  private static final int MAX = 300;

  private final Texts texts = Texts.of("places");
  private final Texts settings = Texts.of("settings");
  private final Project project;

  private PlaceWords(Project project) {
    this.project = project;
  }

  /** The part concerned by a finding, with its scene and time. */
  public static String of(Project project, Finding finding) {
    return SafeText.text(new PlaceWords(project).place(finding), MAX);
  }

  /** A finding in one line: place, what is the case, limit, remedy. */
  public static String line(Project project, Finding finding) {
    String limit = finding.limitWithSource();
    return of(project, finding)
        + ": "
        + finding.what()
        + (limit.isEmpty() ? "" : "; " + limit)
        + (finding.remedy().isEmpty() ? "" : ": " + finding.remedy());
  }

  /** Why an edit of a project is refused: place, value and what is allowed of each fault. */
  public static String of(Project project, InvalidModelException refused) {
    PlaceWords words = new PlaceWords(project);
    return refused.faults().stream().map(words::fault).collect(Collectors.joining("; "));
  }

  private String place(Finding finding) {
    Subject about = finding.subject();
    Optional<Moment> moment = finding.moment();
    if (about instanceof Subject.OneCue cue) {
      return cue(cue);
    }
    String part = part(about);
    if (moment.isEmpty() || (about instanceof Subject.OneScene && moment.get().frame().isEmpty())) {
      return part;
    }
    String time = seconds(moment.get().seconds());
    if (about instanceof Subject.OneScene) {
      return texts.get("at", part, time);
    }
    return moment.get().frame().isPresent()
        ? texts.get("at.scene", part, time, moment.get().scene())
        : texts.get("in.scene", part, moment.get().scene());
  }

  private String part(Subject about) {
    if (about instanceof Subject.OneLamp lamp) {
      return lamp.title();
    } else if (about instanceof Subject.OneChain chain) {
      return Titles.ofChain(chain.id(), texts);
    } else if (about instanceof Subject.OneOutput output) {
      return output(output.id());
    } else if (about instanceof Subject.OneScene scene) {
      return texts.get("scene", scene.id());
    } else if (about instanceof Subject.OneSituation situation) {
      return texts.get("situation", situation.id());
    } else if (about instanceof Subject.OneInput input) {
      return texts.get("input", input.id());
    }
    return about.words();
  }

  private String cue(Subject.OneCue about) {
    Optional<Track> track =
        project
            .scene(about.scene())
            .map(Scene::tracks)
            .filter(all -> about.track() < all.size())
            .map(all -> all.get(about.track()));
    String lamps = track.map(this::lamps).orElse(about.lamps());
    return texts.get(
        "in.scene",
        track
            .map(Track::cues)
            .filter(all -> about.cue() < all.size())
            .map(all -> texts.get("cue", lamps, start(all.get(about.cue()))))
            .orElse(lamps),
        about.scene());
  }

  private String lamps(Track track) {
    List<String> ids = track.lamps();
    String named =
        ids.stream()
            .limit(LAMPS_NAMED)
            .map(id -> project.rig().lamp(id).map(Titles::of).orElse(id))
            .collect(Collectors.joining(", "));
    int more = ids.size() - LAMPS_NAMED;
    return more > 0 ? texts.get("more", named, Integer.toString(more)) : named;
  }

  private String output(String id) {
    return project.rig().lamps().stream()
        .filter(lamp -> lamp.fitting() instanceof Fitting.Output on && on.output().equals(id))
        .findFirst()
        .map(lamp -> texts.get("output.lamp", Titles.of(lamp), id))
        .orElseGet(() -> texts.get("output", id));
  }

  private static String start(Cue cue) {
    return plain(cue.startMs().movePointLeft(3));
  }

  private static String seconds(double seconds) {
    return plain(new BigDecimal(String.format(Locale.ROOT, "%.2f", seconds)));
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  private String fault(Fault fault) {
    return texts.get("fault", path(fault.field()), fault.value(), fault.allowed());
  }

  // Lists by the names of their members, the rest by its labels.
  private String path(String path) {
    List<String> words = new ArrayList<>();
    Optional<Scene> scene = Optional.empty();
    Optional<Track> track = Optional.empty();
    for (Matcher step = STEP.matcher(path); step.find(); ) {
      String name = step.group(1);
      if (step.group(2) == null) {
        if (!name.equals("rig")) {
          words.add(settings.find(name).orElse(name));
        }
        continue;
      }
      int index = Integer.parseInt(step.group(2));
      switch (name) {
        case "scenes" -> {
          scene = member(project.scenes(), index);
          words.add(scene.map(s -> texts.get("scene", s.id())).orElse(texts.get("scene.new")));
        }
        case "tracks" -> {
          track = scene.flatMap(s -> member(s.tracks(), index));
          track.ifPresent(t -> words.add(lamps(t)));
        }
        case "cues" ->
            track
                .flatMap(t -> member(t.cues(), index))
                .ifPresent(cue -> words.add(texts.get("cue.at", start(cue))));
        case "chains" ->
            words.add(
                member(project.rig().chains(), index)
                    .map(chain -> Titles.ofChain(chain.id(), texts))
                    .orElse(texts.get("chain.new")));
        case "outputs" ->
            words.add(
                member(project.rig().outputs(), index)
                    .map(DriverOutput::id)
                    .map(this::output)
                    .orElse(texts.get("output.new")));
        case "lamps" -> {
          // Those of a track have been named with it.
          if (track.isEmpty()) {
            words.add(
                member(project.rig().lamps(), index).map(Titles::of).orElse(texts.get("lamp.new")));
          }
        }
        case "inputs" ->
            words.add(
                member(project.rig().inputs(), index)
                    .map(input -> texts.get("input", input.id()))
                    .orElse(texts.get("input.new")));
        case "situations" ->
            words.add(
                member(project.situations(), index)
                    .map(situation -> texts.get("situation", situation.id()))
                    .orElse(texts.get("situation.new")));
        case "all", "any" -> words.add(texts.get("condition", index + 1));
        case "presets" ->
            words.add(
                member(project.presets(), index)
                    .map(preset -> texts.get("preset", preset.name()))
                    .orElse(texts.get("preset.new")));
        case "pixelTypes" ->
            words.add(
                member(project.pixelTypes(), index)
                    .map(type -> texts.get("type", type.title()))
                    .orElse(texts.get("type.new")));
        default -> words.add(texts.get("member", settings.find(name).orElse(name), index + 1));
      }
    }
    return String.join(", ", words);
  }

  private static <T> Optional<T> member(List<T> list, int index) {
    return index < list.size() ? Optional.of(list.get(index)) : Optional.empty();
  }
}
