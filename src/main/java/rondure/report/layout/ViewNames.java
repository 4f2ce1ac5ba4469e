package rondure.report.layout;

import com.samskivert.mustache.BasicCollector;
import com.samskivert.mustache.Mustache.VariableFetcher;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What a template may name: components of records, keys of maps and places in lists. No method of
 * any object, so that a template runs no code.
 */
final class ViewNames extends BasicCollector {
  @Override
  public VariableFetcher createFetcher(Object view, String name) {
    VariableFetcher known = super.createFetcher(view, name);
    if (known != null || !view.getClass().isRecord()) {
      return known;
    }
    for (RecordComponent component : view.getClass().getRecordComponents()) {
      if (component.getName().equals(name)) {
        Method accessor = component.getAccessor();
        accessor.setAccessible(true);
        return (record, same) -> accessor.invoke(record);
      }
    }
    return null;
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
