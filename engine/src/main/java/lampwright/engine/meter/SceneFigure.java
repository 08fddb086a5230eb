package lampwright.engine.meter;

/**
 * One figure of a whole scene, printed as it is wherever a scene's figures are.
 *
 * @param key its name in {@code measure --json}, with its unit
 * @param title for people, short enough for the column of titles (12 characters)
 * @param value finite
 * @param unit printed behind the value
 * @param words what it is and why it matters, behind the value
 */
public record SceneFigure(String key, String title, double value, String unit, String words) {}
