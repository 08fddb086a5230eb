package lampwright.app.workshop.model.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.edit.ColourOrders;
import lampwright.app.workshop.edit.ColourOrders.Seen;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.PixelType;

/**
 * Finds the colour order of a chain: it lights one byte after another, the builder answers what is
 * seen, and a pixel type of that order is proposed. For the screen's thread.
 */
public final class OrderFinder {
  /**
   * A question.
   *
   * @param chain of the pixel
   * @param seen the answers so far; the byte after them is lit
   */
  public record Question(Chain chain, List<Seen> seen) {
    public Question {
      seen = List.copyOf(seen);
    }

    /** The byte that is lit. */
    public int index() {
      return seen.size();
    }

    /** How many are asked for. */
    public int count() {
      return Math.min(ColourOrders.MOST_BYTES, chain.bytes());
    }
  }

  private final Texts texts = Texts.of("live");
  private final Bench bench;
  private final BenchLink link;
  private final Dialogs dialogs;
  private final ReadOnlyObjectWrapper<Optional<Question>> question =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  public OrderFinder(Bench bench, BenchLink link, Dialogs dialogs) {
    this.bench = bench;
    this.link = link;
    this.dialogs = dialogs;
    bench.watch(state -> state.project().rig(), (before, now) -> rigChanged());
  }

  /** What is asked; empty while nothing is. */
  public ReadOnlyObjectProperty<Optional<Question>> questionProperty() {
    return question.getReadOnlyProperty();
  }

  /** Begins with the first byte of a chain. */
  public void start(Chain chain) {
    ask(new Question(chain, List.of()));
  }

  private void ask(Question next) {
    question.set(Optional.of(next));
    link.test(Optional.of(TestLight.ofByte(bench.project().rig(), next.chain(), next.index())));
  }

  private void rigChanged() {
    question
        .get()
        .filter(now -> !bench.project().rig().chains().contains(now.chain()))
        .ifPresent(gone -> cancel());
  }

  /** This is seen. */
  public void answer(Seen seen) {
    if (question.get().isEmpty()) {
      return;
    }
    Question now = question.get().get();
    List<Seen> all = new ArrayList<>(now.seen());
    all.add(seen);
    if (all.size() < now.count()) {
      ask(new Question(now.chain(), all));
      return;
    }
    cancel();
    Optional<EmitterOrder> order = ColourOrders.of(all);
    if (order.isPresent()) {
      propose(now.chain(), order.get());
    } else {
      dialogs.tell(texts.get("order.title"), texts.get("order.none"));
    }
  }

  /** Asks no more. */
  public void cancel() {
    question.set(Optional.empty());
    link.test(Optional.empty());
  }

  private void propose(Chain chain, EmitterOrder order) {
    if (chain.order().equals(order)) {
      dialogs.tell(texts.get("order.title"), texts.get("order.right", order.letters(), chain.id()));
      return;
    }
    Project project = bench.project();
    Optional<PixelType> type = ColourOrders.type(project, chain, order);
    boolean fits = chain.type().order().size() == order.size();
    List<String> answers = new ArrayList<>();
    List<Edit> edits = new ArrayList<>();
    if (type.isPresent()) {
      answers.add(texts.get("order.type", type.get().id()));
      edits.add(
          Edit.of(
              texts.get("edit.orderType"), p -> ColourOrders.withType(p, chain.id(), type.get())));
    }
    if (fits && !type.equals(Optional.of(chain.type()))) {
      answers.add(texts.get("order.own", chain.type().id(), order.letters()));
      edits.add(
          Edit.of(texts.get("edit.order"), p -> ColourOrders.withOrder(p, chain.id(), order)));
    }
    answers.add(texts.get("order.leave"));
    String found = texts.get("order.found", order.letters(), chain.id(), chain.order().letters());
    int answer = dialogs.choose(texts.get("order.title"), found, answers);
    if (answer < edits.size() && !bench.apply(edits.get(answer))) {
      dialogs.tell(texts.get("order.title"), bench.refusalProperty().get().orElse(""));
    }
  }
}
