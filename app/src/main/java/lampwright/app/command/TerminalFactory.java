package lampwright.app.command;

import java.lang.reflect.Constructor;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes commands, giving those that ask for it the terminal. */
final class TerminalFactory implements IFactory {
  private final IFactory others = CommandLine.defaultFactory();
  private final Terminal terminal;

  TerminalFactory(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    for (Constructor<?> constructor : type.getDeclaredConstructors()) {
      if (constructor.getParameterCount() == 1
          && constructor.getParameterTypes()[0] == Terminal.class) {
        return type.cast(constructor.newInstance(terminal));
      }
    }
    return others.create(type);
  }
}
