/** The numbers of the trade that the program holds, each with its source. */
@org.jspecify.annotations.NullMarked
package lampwright.engine.facts;
