package lampwright.app.workshop.model;

import javafx.beans.value.ObservableBooleanValue;

/**
 * Something that can be done from the menu and by keys.
 *
 * @param key of its text
 * @param keys as {@code Shortcut+Shift+Z}; empty if it has none
 * @param possible whether it can be done now
 * @param run does it
 */
public record Act(String key, String keys, ObservableBooleanValue possible, Runnable run) {}
