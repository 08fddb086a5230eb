package lampwright.app.workshop.model.situation;

/**
 * A situation on the ladder.
 *
 * @param id of the situation
 * @param priority of those that are active, the highest has a lamp
 * @param scene what it shows, in words
 * @param when what makes it active, in words
 */
public record Rung(String id, int priority, String scene, String when) {}
