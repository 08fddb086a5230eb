package lampwright.app.picture;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A GIF in the making (CompuServe, Graphics Interchange Format 89a). A picture follows another no
 * sooner than {@link #LEAST_DELAY}; what would is left out, so that time does not add up wrongly.
 * Of each picture only the rectangle that differs from the one before is written.
 */
public final class MovingPicture implements AutoCloseable {
  /**
   * Hundredths of a second, the unit of the format. Common practice: programs that show such files
   * take shorter delays for ten times as long.
   */
  public static final int LEAST_DELAY = 2;

  /** The format has 16 bits for a delay; a picture that is to stay for longer stays so long. */
  private static final int MOST_DELAY = 0xFFFF;

  private static final String METADATA = "javax_imageio_gif_image_1.0";
  private static final ImageTypeSpecifier COLOURS =
      ImageTypeSpecifier.createFromBufferedImageType(BufferedImage.TYPE_INT_ARGB);

  private final int width;
  private final int height;
  private final boolean loops;
  private final ImageWriter writer;
  private final MemoryCacheImageOutputStream out;
  private final int[] last;
  private BufferedImage waiting;
  private int waitingLeft;
  private int waitingTop;
  private long waitingStart;
  private int pictures;

  /**
   * Begins one with its first picture, which is shown from 0 on.
   *
   * @param argb opaque colours, row by row
   * @param loops whether it begins again after its end
   * @param to is not closed
   */
  public MovingPicture(int width, int height, int[] argb, boolean loops, OutputStream to)
      throws IOException {
    this.width = width;
    this.height = height;
    this.loops = loops;
    this.last = argb.clone();
    this.waiting = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
    waiting.setRGB(0, 0, width, height, argb, 0, width);
    this.writer = ImageIO.getImageWritersByFormatName("gif").next();
    this.out = new MemoryCacheImageOutputStream(to);
    writer.setOutput(out);
    writer.prepareWriteSequence(null);
  }

  /** How many pictures there are so far. */
  public int pictures() {
    return pictures + 1;
  }

  /** Whether a picture can begin at an instant: hundredths of a second from the start. */
  public boolean hasRoomAt(long hundredths) {
    return hundredths - waitingStart >= LEAST_DELAY;
  }

  /**
   * Shows another picture from an instant on.
   *
   * @param argb opaque colours, row by row
   * @throws IllegalArgumentException if there is no room for it
   */
  public void show(int[] argb, long hundredths) throws IOException {
    if (!hasRoomAt(hundredths)) {
      throw new IllegalArgumentException(hundredths + ": is too soon after " + waitingStart);
    }
    int left = width;
    int right = -1;
    int top = -1;
    int bottom = -1;
    for (int y = 0; y < height; y++) {
      int from = y * width;
      int differs = Arrays.mismatch(argb, from, from + width, last, from, from + width);
      if (differs >= 0) {
        top = top < 0 ? y : top;
        bottom = y;
        left = Math.min(left, differs);
        int end = width - 1;
        while (end > right && argb[from + end] == last[from + end]) {
          end--;
        }
        right = Math.max(right, end);
      }
    }
    if (top < 0) {
      return;
    }
    write(hundredths);
    waiting = new BufferedImage(right - left + 1, bottom - top + 1, BufferedImage.TYPE_INT_ARGB);
    for (int y = top; y <= bottom; y++) {
      for (int x = left; x <= right; x++) {
        int at = y * width + x;
        // What stays is seen through.
        if (argb[at] != last[at]) {
          waiting.setRGB(x - left, y - top, argb[at]);
        }
      }
    }
    waitingLeft = left;
    waitingTop = top;
    waitingStart = hundredths;
    System.arraycopy(argb, 0, last, 0, argb.length);
    pictures++;
  }

  /** Ends it at an instant: hundredths of a second from the start. */
  public void end(long hundredths) throws IOException {
    write(Math.max(hundredths, waitingStart + LEAST_DELAY));
    writer.endWriteSequence();
    out.flush();
  }

  /** Lets go of what it holds; does not end the file. */
  @Override
  public void close() {
    writer.dispose();
  }

  private void write(long until) throws IOException {
    int delay = Math.toIntExact(Math.min(until - waitingStart, MOST_DELAY));
    IIOMetadata metadata = writer.getDefaultImageMetadata(COLOURS, null);
    try {
      IIOMetadataNode root = (IIOMetadataNode) metadata.getAsTree(METADATA);
      IIOMetadataNode place = child(root, "ImageDescriptor");
      place.setAttribute("imageLeftPosition", Integer.toString(waitingLeft));
      place.setAttribute("imageTopPosition", Integer.toString(waitingTop));
      IIOMetadataNode control = child(root, "GraphicControlExtension");
      control.setAttribute("disposalMethod", "doNotDispose");
      control.setAttribute("userInputFlag", "FALSE");
      control.setAttribute("delayTime", Integer.toString(delay));
      if (pictures == 0 && loops) {
        child(root, "ApplicationExtensions").appendChild(endless());
      }
      metadata.setFromTree(METADATA, root);
    } catch (IIOInvalidTreeException impossible) {
      throw new IOException(impossible);
    }
    writer.writeToSequence(new IIOImage(waiting, null, metadata), null);
  }

  // As programs of the nineties began to write it, and all read it (common practice).
  private static IIOMetadataNode endless() {
    IIOMetadataNode node = new IIOMetadataNode("ApplicationExtension");
    node.setAttribute("applicationID", "NETSCAPE");
    node.setAttribute("authenticationCode", "2.0");
    node.setUserObject(new byte[] {1, 0, 0});
    return node;
  }

  private static IIOMetadataNode child(IIOMetadataNode root, String name) {
    for (int i = 0; i < root.getLength(); i++) {
      if (root.item(i).getNodeName().equals(name)) {
        return (IIOMetadataNode) root.item(i);
      }
    }
    IIOMetadataNode made = new IIOMetadataNode(name);
    root.appendChild(made);
    return made;
  }
}
