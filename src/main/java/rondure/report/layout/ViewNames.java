package rondure.report.layout;

import com.samskivert.mustache.BasicCollector;
import com.samskivert.mustache.Mustache.VariableFetcher;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What a template may name: what the records of the views say of themselves, keys of maps and
 * places in lists. No other method of any object, so that a template runs no code.
 */
final class ViewNames extends BasicCollector {
  private static final Set<String> OF_EVERY_OBJECT = Set.of("hashCode", "toString");

  @Override
  public VariableFetcher createFetcher(Object view, String name) {
    VariableFetcher known = super.createFetcher(view, name);
    if (known != null || !view.getClass().isRecord()) {
      return known;
    }
    for (Method told : view.getClass().getDeclaredMethods()) {
      if (told.getName().equals(name) && isTold(told)) {
        told.setAccessible(true);
        return (record, same) -> told.invoke(record);
      }
    }
    return null;
  }

  /** What a view says of itself, its components among it; not what every object says. */
  private static boolean isTold(Method method) {
    return method.getParameterCount() == 0
        && !Modifier.isStatic(method.getModifiers())
        && !method.isSynthetic()
        && !OF_EVERY_OBJECT.contains(method.getName());
  }

  @Override
  public Iterator<?> toIterator(Object value) {
    return value instanceof Optional<?> some ? some.stream().iterator() : super.toIterator(value);
  }

  @Override
  public <K, V> Map<K, V> createFetcherCache() {
    return new ConcurrentHashMap<>();
  }
}
