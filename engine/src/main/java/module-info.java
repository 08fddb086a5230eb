/** The model of a lit scale model, and the renderer that turns it into bytes. */
module lampwright.engine {
  requires com.google.common;
  requires tools.jackson.core;
  requires static org.jspecify;

  exports lampwright.engine.check;
  exports lampwright.engine.disk;
  exports lampwright.engine.facts;
  exports lampwright.engine.light;
  exports lampwright.engine.meter;
  exports lampwright.engine.pattern;
  exports lampwright.engine.document;
  exports lampwright.engine.field;
  exports lampwright.engine.json;
  exports lampwright.engine.render;
  exports lampwright.engine.review;
  exports lampwright.engine.rig;
  exports lampwright.engine.scene;
  exports lampwright.engine.situation;
  exports lampwright.engine.time;
  exports lampwright.engine.words;
  exports lampwright.engine.work;
}
