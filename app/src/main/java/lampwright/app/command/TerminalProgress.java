package lampwright.app.command;

import lampwright.exporters.Progress;

/** Shows the progress of an export, a line for each percent and no more. */
final class TerminalProgress implements Progress {
  private final Terminal terminal;
  private final String what;
  private int shown = -1;

  TerminalProgress(Terminal terminal, String what) {
    this.terminal = terminal;
    this.what = what;
  }

  @Override
  public void frames(int done, int total) {
    int percent = (int) (100L * done / Math.max(1, total));
    if (percent != shown) {
      shown = percent;
      terminal.progress(what, done, total);
    }
  }
}
