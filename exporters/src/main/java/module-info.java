/** One export format each behind one small interface. */
module lampwright.exporters {
  requires transitive lampwright.engine;
  requires static org.jspecify;

  exports lampwright.exporters;
  exports lampwright.exporters.table;
}
