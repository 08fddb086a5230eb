/** One export format each behind one small interface. */
module lampwright.exporters {
  requires transitive lampwright.engine;
  requires com.google.common;
  requires static org.jspecify;

  exports lampwright.exporters;
  exports lampwright.exporters.firmware;
  exports lampwright.exporters.live;
  exports lampwright.exporters.packed.encode;
  exports lampwright.exporters.packed.play;
  exports lampwright.exporters.picture;
  exports lampwright.exporters.proof;
  exports lampwright.exporters.sheet;
  exports lampwright.exporters.table;
  exports lampwright.exporters.target;
  exports lampwright.exporters.wiring;
}
