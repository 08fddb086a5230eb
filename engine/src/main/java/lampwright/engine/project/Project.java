package lampwright.engine.project;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Scene;

/**
 * The saved document: one rig and its scenes.
 *
 * @param name for people
 * @param pixelTypes the project's own, besides the built-in ones; every chain has one of either
 * @param rig what is fitted
 * @param pictures of the model, at most one of each view
 * @param scenes each with an id of its own; they drive lamps of the rig
 */
public record Project(
    String name, List<PixelType> pixelTypes, Rig rig, List<Picture> pictures, List<Scene> scenes) {
  public static final ListLimit SCENES = new ListLimit(0, 1000, "scenes");
  public static final ListLimit PIXEL_TYPES = new ListLimit(0, 256, "pixel types");
  public static final ListLimit PICTURES = new ListLimit(0, View.values().length, "pictures");

  public Project {
    pixelTypes = List.copyOf(pixelTypes);
    pictures = List.copyOf(pictures);
    scenes = List.copyOf(scenes);
    Checks.of("project")
        .addAll(ProjectFaults.find(name, pixelTypes, rig.chains(), rig.lamps(), pictures, scenes))
        .done();
  }

  /** A project without pictures. */
  public Project(String name, List<PixelType> pixelTypes, Rig rig, List<Scene> scenes) {
    this(name, pixelTypes, rig, List.of(), scenes);
  }

  /** A project of this rig and these scenes. */
  public static Project of(String name, Rig rig, Scene... scenes) {
    return new Project(name, List.of(), rig, List.of(scenes));
  }

  public Project withName(String newName) {
    return new Project(newName, pixelTypes, rig, pictures, scenes);
  }

  public Project withPixelTypes(List<PixelType> newPixelTypes) {
    return new Project(name, newPixelTypes, rig, pictures, scenes);
  }

  public Project withRig(Rig newRig) {
    return new Project(name, pixelTypes, newRig, pictures, scenes);
  }

  public Project withPictures(List<Picture> newPictures) {
    return new Project(name, pixelTypes, rig, newPictures, scenes);
  }

  public Project withScenes(List<Scene> newScenes) {
    return new Project(name, pixelTypes, rig, pictures, newScenes);
  }

  /** The picture of a view, if there is one. */
  public Optional<Picture> picture(View view) {
    return pictures.stream().filter(p -> p.view() == view).findFirst();
  }

  /** The scene with this id. */
  public Optional<Scene> scene(String id) {
    return scenes.stream().filter(s -> s.id().equals(id)).findFirst();
  }
}
