/** The build sheet: what a builder needs on paper to wire a model and power it up. */
@NullMarked
package lampwright.exporters.sheet;

import org.jspecify.annotations.NullMarked;
