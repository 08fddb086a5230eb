package lampwright.app.workshop.view.export;

import java.util.List;
import javafx.scene.Scene;
import javafx.stage.Modality;
import javafx.stage.Stage;
import javafx.stage.Window;
import lampwright.app.workshop.model.export.ExportModel;
import lampwright.app.workshop.words.Texts;

/** The window of an export, over the one that it belongs to. */
public final class ExportDialog {
  private static final double WIDTH_EM = 72;
  private static final double HEIGHT_EM = 46;
  private static final double EM = javafx.scene.text.Font.getDefault().getSize();

  private ExportDialog() {}

  /**
   * Shows it; returns at once.
   *
   * @param stylesheets of the owner's scene
   */
  public static Stage show(Window owner, ExportModel model, List<String> stylesheets) {
    Stage stage = new Stage();
    stage.initOwner(owner);
    stage.initModality(Modality.WINDOW_MODAL);
    stage.setTitle(Texts.of("export").get("title"));
    Scene scene = new Scene(new ExportPane(model, stage::close), WIDTH_EM * EM, HEIGHT_EM * EM);
    scene.getStylesheets().setAll(stylesheets);
    stage.setScene(scene);
    stage.setOnHidden(hidden -> model.cancel());
    stage.show();
    return stage;
  }
}
