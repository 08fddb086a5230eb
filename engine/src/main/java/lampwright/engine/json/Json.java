package lampwright.engine.json;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.SafeText;

/** A JSON value and where it is in the file: line and column counted from 1. */
sealed interface Json {
  int line();

  int column();

  /** The value in short, for messages. */
  String shown();

  /** The value in short, with the word for its type where that does not show. */
  default String shownWithType() {
    return shown();
  }

  record Text(int line, int column, String value) implements Json {
    @Override
    public String shown() {
      return SafeText.quoted(value);
    }

    @Override
    public String shownWithType() {
      return shown() + " (string)";
    }
  }

  /** A number as its characters: what they are worth is asked where it is known what for. */
  record Num(int line, int column, String raw) implements Json {
    @Override
    public String shown() {
      return SafeText.text(raw, 40);
    }

    @Override
    public String shownWithType() {
      return shown() + " (number)";
    }
  }

  record Flag(int line, int column, boolean value) implements Json {
    @Override
    public String shown() {
      return String.valueOf(value);
    }
  }

  record Null(int line, int column) implements Json {
    @Override
    public String shown() {
      return "null";
    }
  }

  record Arr(int line, int column, List<Json> items) implements Json {
    @Override
    public String shown() {
      return "a list";
    }
  }

  /** Members in the order of the file, each name once. */
  record Obj(int line, int column, List<Member> members) implements Json {
    @Override
    public String shown() {
      return "an object";
    }

    Optional<Json> find(String name) {
      // Few members are usual, and of many each known field is looked for once.
      for (Member member : members) {
        if (member.name().equals(name)) {
          return Optional.of(member.value());
        }
      }
      return Optional.empty();
    }
  }

  /** A named value; the position is that of the name. */
  record Member(int line, int column, String name, Json value) {}
}
