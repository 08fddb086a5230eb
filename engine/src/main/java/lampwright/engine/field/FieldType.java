package lampwright.engine.field;

import lampwright.engine.check.Checks;

/**
 * What a field can hold. Everything that is done with every type of field is a {@link Visitor}, so
 * that a type forgotten does not compile.
 *
 * @param <V> the value in the model
 */
public sealed interface FieldType<V>
    permits ChoiceType,
        DecimalType,
        FlagType,
        FormType,
        IdType,
        KeyedType,
        ListType,
        NarrowType,
        NumberType,
        OptionalType,
        PairType,
        RecordType,
        ReferenceType,
        TextType,
        UnionType,
        WholeType {
  /** Adds what is wrong with a value. Records within it have checked themselves. */
  void check(String field, V value, Checks checks);

  /**
   * The value as JSON has it: a String, BigDecimal or Boolean, a List of such, or a Map from names
   * to such, in the order in which they are written.
   */
  Object plain(V value);

  /** Does what is to be done with this type. */
  <O> O accept(Visitor<O> visitor);

  /**
   * Something to do with every type of field.
   *
   * @param <O> what it gives
   */
  interface Visitor<O> {
    <E> O choice(ChoiceType<E> type);

    O decimal(DecimalType type);

    O flag(FlagType type);

    <E> O form(FormType<E> type);

    O id(IdType type);

    <K extends Comparable<K>, E> O keyed(KeyedType<K, E> type);

    <E> O list(ListType<E> type);

    <E, W extends E> O narrow(NarrowType<E, W> type);

    O number(NumberType type);

    <E, P> O optional(OptionalType<E, P> type);

    O pair(PairType type);

    <E> O record(RecordType<E> type);

    <E> O reference(ReferenceType<E> type);

    O text(TextType type);

    <E> O union(UnionType<E> type);

    <N extends Number> O whole(WholeType<N> type);
  }
}
