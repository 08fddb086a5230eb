package lampwright.app.workshop.model.files;

import java.nio.file.Path;
import java.util.concurrent.Executor;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.disk.Owner;
import lampwright.app.workshop.model.Asker;
import lampwright.app.workshop.model.Bench;

/**
 * What the file models work with.
 *
 * @param bench whose project is kept
 * @param asker asks the builder
 * @param disk does what waits for a disk
 * @param screen runs what it is given on the screen's thread
 * @param state the user's state folder
 * @param self this process
 */
public record Workplace(
    Bench bench, Asker asker, Background disk, Executor screen, Path state, Owner self) {}
