package lampwright.engine;

import java.lang.reflect.AnnotatedElement;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import net.jqwik.api.lifecycle.AroundTryHook;
import net.jqwik.api.lifecycle.Lifespan;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.Store;
import net.jqwik.api.lifecycle.TryExecutionResult;
import net.jqwik.api.lifecycle.TryExecutor;
import net.jqwik.api.lifecycle.TryLifecycleContext;

/**
 * Ends each property after as many tries as {@code -Dlampwright.tries} says, for runs that repeat a
 * test hundreds of times; without it a property runs as often as it is written. It reaches every
 * property by its entry among the services.
 */
public final class FewTries implements AroundTryHook {
  private static final int MOST = Integer.getInteger("lampwright.tries", Integer.MAX_VALUE);

  @Override
  public TryExecutionResult aroundTry(
      TryLifecycleContext context, TryExecutor aTry, List<Object> parameters) {
    AtomicInteger tries =
        Store.getOrCreate(FewTries.class, Lifespan.PROPERTY, AtomicInteger::new).get();
    TryExecutionResult result = aTry.execute(parameters);
    return result.isSatisfied() && tries.incrementAndGet() >= MOST
        ? TryExecutionResult.satisfied(true)
        : result;
  }

  @Override
  public boolean appliesTo(Optional<AnnotatedElement> element) {
    return MOST < Integer.MAX_VALUE;
  }

  @Override
  public PropagationMode propagateTo() {
    return PropagationMode.ALL_DESCENDANTS;
  }
}
