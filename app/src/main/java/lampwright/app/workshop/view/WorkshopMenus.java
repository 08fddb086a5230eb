package lampwright.app.workshop.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.property.BooleanProperty;
import javafx.beans.value.ObservableValue;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import lampwright.app.workshop.model.Act;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.files.FilesModel;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.model.ribbon.RibbonActs;
import lampwright.app.workshop.model.rig.RigHands;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.rig.View;

/** All menus. */
final class WorkshopMenus {
  private final Texts files = Texts.of("files");
  private final Texts ribbons = Texts.of("ribbons");
  private final Texts rig = Texts.of("rig");
  private final Texts drawing = Texts.of("drawing");
  private final Texts texts = Texts.of("workshop");
  private final WorkshopParts parts;

  WorkshopMenus(WorkshopParts parts) {
    this.parts = parts;
  }

  MenuBar bar(Runnable export, Runnable offerKinds, Runnable keys, BooleanProperty dark) {
    MenuBar bar = new MenuBar();
    bar.getMenus()
        .setAll(
            project(export),
            cues(offerKinds),
            ActMenus.menu(texts.get("menu.rig"), rig, rigActs(parts.rigHands())),
            ActMenus.menu(texts.get("menu.play"), drawing, playActs(parts.player())),
            show(dark, keys));
    return bar;
  }

  private Menu project(Runnable export) {
    FilesModel model = parts.files();
    Menu menu = ActMenus.menu(texts.get("menu.project"), files, model.acts().subList(0, 4));
    Menu last = new Menu(texts.get("menu.last"));
    Runnable list =
        () -> {
          last.getItems().clear();
          for (Path file : model.recents().list()) {
            MenuItem item = new MenuItem(file.toString());
            item.setMnemonicParsing(false);
            item.setOnAction(event -> model.open(file));
            last.getItems().add(item);
          }
          last.setDisable(last.getItems().isEmpty());
        };
    model
        .recents()
        .list()
        .addListener((javafx.collections.ListChangeListener<Path>) change -> list.run());
    list.run();
    Act exports = new Act("menu.export", "Shortcut+E", always(), export);
    menu.getItems().add(2, last);
    menu.getItems()
        .addAll(
            new SeparatorMenuItem(),
            ActMenus.item(texts, exports),
            new SeparatorMenuItem(),
            ActMenus.item(files, model.acts().get(4)));
    return menu;
  }

  private Menu cues(Runnable offerKinds) {
    Menu menu = new Menu(texts.get("menu.cues"));
    menu.getItems()
        .addAll(
            named(5, "undo.named", parts.bench().undoNameProperty()),
            named(6, "redo.named", parts.bench().redoNameProperty()),
            new SeparatorMenuItem());
    RibbonActs.cues(parts.hands(), offerKinds)
        .forEach(act -> menu.getItems().add(ActMenus.item(ribbons, act)));
    return menu;
  }

  private MenuItem named(int act, String key, ObservableValue<Optional<String>> name) {
    Act of = parts.files().acts().get(act);
    MenuItem item = ActMenus.item(files, of);
    item.textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    name.getValue()
                        .map(n -> files.get(key, n))
                        .orElseGet(() -> files.get(of.key())),
                name));
    item.setMnemonicParsing(false);
    return item;
  }

  private Menu show(BooleanProperty dark, Runnable keys) {
    Menu menu = new Menu(texts.get("menu.show"));
    DrawingModel model = parts.drawing();
    viewActs(model).forEach(act -> menu.getItems().add(ActMenus.item(drawing, act)));
    menu.getItems().add(new SeparatorMenuItem());
    RibbonActs.look(parts.ribbons())
        .forEach(act -> menu.getItems().add(ActMenus.item(ribbons, act)));
    menu.getItems()
        .addAll(
            new SeparatorMenuItem(),
            ActMenus.item(
                texts,
                new Act("menu.dark", "Shortcut+Shift+D", always(), () -> dark.set(!dark.get()))),
            ActMenus.item(
                texts,
                new Act(
                    "menu.stopPacking",
                    "",
                    parts.packs().progressProperty().lessThan(1),
                    parts.packs()::cancel)),
            ActMenus.item(texts, new Act("menu.keys", "F1", always(), keys)));
    return menu;
  }

  static List<Act> rigActs(RigHands hands) {
    return List.of(
        new Act("act.addChain", "", always(), hands::addChain),
        new Act("act.addOutput", "", always(), hands::addOutput),
        new Act("act.makeLamp", "Shortcut+L", always(), hands::makeLamp),
        new Act("act.makeLamps", "Shortcut+Shift+P", always(), hands::makeLamps),
        new Act("act.benchTest", "Shortcut+B", always(), hands::benchTest),
        new Act("act.addType", "", always(), hands::addType),
        new Act("act.addScene", "", always(), hands::addScene),
        new Act("act.copyScene", "", always(), hands::copyScene),
        new Act("act.remove", "", always(), hands::remove));
  }

  /** Their keys have no modifier, so the window listens for them where no text is typed. */
  static List<Act> playActs(Player player) {
    return List.of(
        new Act("act.play", "", always(), player::toggle),
        new Act("act.back", "", always(), () -> player.step(-1)),
        new Act("act.forward", "", always(), () -> player.step(1)),
        new Act("act.start", "", always(), player::toStart),
        new Act("act.end", "", always(), player::toEnd),
        new Act(
            "act.loop",
            "",
            always(),
            () -> player.loopingProperty().set(!player.loopingProperty().get())),
        new Act("act.slower", "", always(), () -> nextPace(player)));
  }

  private List<Act> viewActs(DrawingModel model) {
    return List.of(
        view("act.view.front", "Shortcut+1", model, View.FRONT),
        view("act.view.side", "Shortcut+2", model, View.SIDE),
        view("act.view.rear", "Shortcut+3", model, View.REAR),
        view("act.view.top", "Shortcut+4", model, View.TOP),
        new Act(
            "act.night",
            "",
            always(),
            () -> model.sheet().nightProperty().set(!model.sheet().nightProperty().get())),
        new Act("act.brighter", "", always(), () -> expose(model, 1)),
        new Act("act.darker", "", always(), () -> expose(model, -1)),
        new Act("act.picture", "", always(), parts.picture()),
        new Act("act.outline", "", always(), () -> model.picture(Optional.empty())));
  }

  private static Act view(String key, String keys, DrawingModel model, View view) {
    return new Act(key, keys, always(), () -> model.sheet().viewProperty().set(view));
  }

  private static void expose(DrawingModel model, int by) {
    int wanted = model.exposureProperty().get() + by;
    model
        .exposureProperty()
        .set(Math.max(DrawingModel.LEAST_EXPOSURE, Math.min(DrawingModel.MOST_EXPOSURE, wanted)));
  }

  static void nextPace(Player player) {
    player.paceProperty().set(player.paceProperty().get().next());
  }

  private static javafx.beans.value.ObservableBooleanValue always() {
    return Bindings.createBooleanBinding(() -> true);
  }
}
