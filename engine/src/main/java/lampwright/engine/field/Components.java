package lampwright.engine.field;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.engine.check.Checks;

/** The components of a record in the order of its canonical constructor. */
final class Components<R> {
  private final List<Part<R, ?>> inOrder = new ArrayList<>();
  private final Constructor<R> constructor;

  Components(Class<R> type, List<Part<R, ?>> parts) {
    RecordComponent[] components = type.getRecordComponents();
    for (RecordComponent component : components) {
      List<Part<R, ?>> giving =
          parts.stream().filter(p -> p.component().equals(component.getName())).toList();
      if (giving.size() != 1) {
        throw new IllegalArgumentException(
            type.getSimpleName() + "." + component.getName() + ": " + giving.size() + " parts");
      }
      inOrder.add(giving.get(0));
    }
    if (parts.size() != components.length) {
      throw new IllegalArgumentException(
          type.getSimpleName() + ": parts " + parts + " for " + inOrder);
    }
    constructor = constructor(type, components);
  }

  // No method handle: of those, code is made for each number of components at each start.
  private static <R> Constructor<R> constructor(Class<R> type, RecordComponent[] components) {
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    try {
      return type.getConstructor(types);
    } catch (NoSuchMethodException hidden) {
      throw new IllegalArgumentException(type + " has no public canonical constructor", hidden);
    }
  }

  R make(Draft<R> draft) {
    Object[] values = new Object[inOrder.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = draft.get(inOrder.get(i));
    }
    try {
      return constructor.newInstance(values);
    } catch (InvocationTargetException thrown) {
      throw refusal(thrown.getCause());
    } catch (ReflectiveOperationException hidden) {
      throw new IllegalStateException(constructor + " can't be called", hidden);
    }
  }

  private static RuntimeException refusal(Throwable thrown) {
    if (thrown instanceof Error error) {
      throw error;
    }
    return thrown instanceof RuntimeException refused
        ? refused
        : new IllegalStateException("a record's constructor threw", thrown);
  }

  Checks check(Checks checks, Object[] values) {
    if (values.length != inOrder.size()) {
      throw new IllegalArgumentException(values.length + " values for " + inOrder);
    }
    for (int i = 0; i < values.length; i++) {
      check(inOrder.get(i), values[i], checks);
    }
    return checks;
  }

  /** The same of what a draft has. */
  Checks check(Checks checks, Draft<R> draft) {
    return check(checks, inOrder.stream().map(draft::get).toArray());
  }

  @SuppressWarnings("unchecked") // the record gives its own components, in order
  private static <R, V> void check(Part<R, V> part, Object value, Checks checks) {
    if (part instanceof Field<R, V> field) {
      field.type().check(field.name(), (V) value, checks);
    } else if (part instanceof Group<R, V> group) {
      group.parts().checkParts((V) value, checks);
    }
  }
}
