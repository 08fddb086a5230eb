package lampwright.app.workshop.model.command;

/** The menus, from the left. */
public enum CommandMenu {
  PROJECT("menu.project"),
  CUES("menu.cues"),
  RIG("menu.rig"),
  PLAY("menu.play"),
  SHOW("menu.show"),
  HELP("menu.help");

  private final String words;

  CommandMenu(String words) {
    this.words = words;
  }

  /** The key of its title in the texts of the workshop. */
  public String words() {
    return words;
  }
}
