package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.ChainEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.document.Project;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.exporters.wiring.WiringPlan;

/** The rig editor: its parts, which of them is selected, and its form. */
public final class RigModel {
  private final Texts texts = Texts.of("rig");
  private final Bench bench;
  private final RigForms forms;
  private final ObjectProperty<RigPart> chosen = new SimpleObjectProperty<>(new RigPart.Supply());
  private final ObjectProperty<Set<Integer>> marked = new SimpleObjectProperty<>(Set.of());
  private final ObjectProperty<List<Finding>> findings = new SimpleObjectProperty<>(List.of());
  private final ReadOnlyObjectWrapper<Optional<Form>> form =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  public RigModel(Bench bench, Dialogs dialogs) {
    this.bench = bench;
    forms = new RigForms(bench, dialogs, chosen::set);
    chosen.addListener(
        (of, before, now) -> {
          if (!before.equals(now)) {
            marked.set(Set.of());
          }
          refresh();
        });
    bench.projectProperty().addListener((of, before, now) -> refresh());
    bench
        .selectionProperty()
        .addListener(
            (of, before, now) -> {
              if (!before.lamp().equals(now.lamp())) {
                now.lamp().ifPresent(lamp -> chosen.set(new RigPart.OfLamp(lamp)));
              }
            });
    refresh();
  }

  public Bench bench() {
    return bench;
  }

  /** The part whose form is shown. */
  public ObjectProperty<RigPart> chosenProperty() {
    return chosen;
  }

  /** The marked pixels of the selected chain. */
  public ObjectProperty<Set<Integer>> markedProperty() {
    return marked;
  }

  /** The findings that the wiring shows. */
  public ObjectProperty<List<Finding>> findingsProperty() {
    return findings;
  }

  /** The parts in front of pixels and LEDs. */
  public WiringPlan plan() {
    return WiringPlan.of(bench.project().rig(), findings.get());
  }

  /** The values of the selected part. */
  public ReadOnlyObjectProperty<Optional<Form>> formProperty() {
    return form.getReadOnlyProperty();
  }

  /** All parts in order. */
  public List<RigPart> parts() {
    Project project = bench.project();
    List<RigPart> parts = new ArrayList<>();
    parts.add(new RigPart.Supply());
    project.rig().chains().forEach(c -> parts.add(new RigPart.OfChain(c.id())));
    project.rig().outputs().forEach(o -> parts.add(new RigPart.OfOutput(o.id())));
    project.rig().inputs().forEach(i -> parts.add(new RigPart.OfInput(i.id())));
    project.rig().lamps().forEach(l -> parts.add(new RigPart.OfLamp(l.id())));
    project.pixelTypes().forEach(t -> parts.add(new RigPart.OfType(t.id())));
    project.scenes().forEach(s -> parts.add(new RigPart.OfScene(s.id())));
    return parts;
  }

  /** A part's name in the list. */
  public String title(RigPart part) {
    if (part instanceof RigPart.OfChain p) {
      return texts.get(
          "part.chain",
          Titles.ofChain(p.id(), texts),
          chain(p.id()).map(c -> c.type().family()).orElse(""));
    } else if (part instanceof RigPart.OfOutput p) {
      return texts.get("part.output", p.id());
    } else if (part instanceof RigPart.OfInput p) {
      return texts.get("part.input", p.id());
    } else if (part instanceof RigPart.OfLamp p) {
      return texts.get(
          "part.lamp", bench.project().rig().lamp(p.id()).map(Lamp::title).orElse(p.id()));
    } else if (part instanceof RigPart.OfType p) {
      return texts.get(
          "part.type",
          bench.project().pixelTypes().stream()
              .filter(t -> t.id().equals(p.id()))
              .findFirst()
              .map(PixelType::title)
              .orElse(p.id()));
    } else if (part instanceof RigPart.OfScene p) {
      return texts.get("part.scene", p.id());
    }
    return texts.get("part.supply");
  }

  /** What can hurt someone at the selected part; may be empty. */
  public String caution() {
    return chosen.get() instanceof RigPart.Supply ? texts.get("notes.supply") : "";
  }

  /** What is worth knowing about the selected part: free pixels, sources; several lines. */
  public String notes() {
    RigPart part = chosen.get();
    if (part instanceof RigPart.OfChain p && chain(p.id()).isPresent()) {
      Chain chain = chain(p.id()).get();
      String sources =
          BuiltInPixelTypes.numbers(chain.type().id()).stream()
              .map(SourcedNumber::origin)
              .distinct()
              .limit(3)
              .collect(Collectors.joining("\n"));
      String free =
          texts.get(
              "notes.free",
              Integer.toString(ChainEdits.free(bench.project().rig(), chain).size()),
              Integer.toString(chain.pixels()));
      return free + (sources.isEmpty() ? "" : "\n" + texts.get("notes.sources", sources));
    }
    return "";
  }

  /** Which lamp has a pixel. */
  public Optional<Lamp> owner(String chain, int pixel) {
    return bench.project().rig().lamps().stream()
        .filter(
            l ->
                l.fitting() instanceof Fitting.Pixels f
                    && f.runs().stream()
                        .anyMatch(
                            r -> r.chain().equals(chain) && r.from() <= pixel && pixel < r.end()))
        .findFirst();
  }

  /** The chain of an id. */
  Optional<Chain> chain(String id) {
    return bench.project().rig().chains().stream().filter(c -> c.id().equals(id)).findFirst();
  }

  private void refresh() {
    RigPart part = chosen.get();
    if (!parts().contains(part)) {
      chosen.set(new RigPart.Supply());
      return;
    }
    Object structure = forms.structure(part);
    Optional<Form> shown = form.get();
    if (shown.map(Form::structure).filter(structure::equals).isPresent()) {
      shown.orElseThrow().refresh();
    } else {
      form.set(Optional.of(forms.form(part, title(part))));
    }
  }
}
