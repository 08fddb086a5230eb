package lampwright.app.command;

import lampwright.app.help.Version;
import picocli.CommandLine.IVersionProvider;

/** What {@code --version} prints. */
final class ProgramVersion implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {
      "lampwright " + Version.number(),
      "Java " + System.getProperty("java.version") + ", " + System.getProperty("os.name")
    };
  }
}
