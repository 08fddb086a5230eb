package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.image.Image;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.util.WaitForAsyncUtils;

/**
 * The icon of installers in the forms of three systems is that of the window. {@code
 * -Dlampwright.writeIcons=true} writes them anew.
 */
@ExtendWith(ApplicationExtension.class)
class IconFilesTest {
  private static final Path ICONS = Path.of("src/main/dist/icon");
  private static final boolean WRITE = Boolean.getBoolean("lampwright.writeIcons");

  /** Sizes of the Windows form, and the types of those that macOS knows. */
  private static final Map<Integer, String> MAC_TYPES = Map.of(128, "ic07", 256, "ic08");

  private static Map<Integer, BufferedImage> drawn() {
    return WaitForAsyncUtils.waitForAsyncFx(60_000, WindowIcon::all).stream()
        .collect(
            Collectors.toMap(
                image -> (int) image.getWidth(),
                (Image image) -> SwingFXUtils.fromFXImage(image, null),
                (a, b) -> a,
                TreeMap::new));
  }

  private static byte[] png(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "png", bytes);
    return bytes.toByteArray();
  }

  private static void assertSame(byte[] png, BufferedImage drawn) throws IOException {
    BufferedImage read = ImageIO.read(new ByteArrayInputStream(png));
    assertThat(read.getWidth()).isEqualTo(drawn.getWidth());
    for (int y = 0; y < drawn.getHeight(); y++) {
      for (int x = 0; x < drawn.getWidth(); x++) {
        // Edges may be smoothed otherwise where another machine paints.
        int of = read.getRGB(x, y);
        int to = drawn.getRGB(x, y);
        for (int shift = 0; shift < 32; shift += 8) {
          assertThat(Math.abs((of >> shift & 0xFF) - (to >> shift & 0xFF)))
              .as("%d, %d", x, y)
              .isLessThan(40);
        }
      }
    }
  }

  @Test
  void pngIsTheWindowsIcon() throws IOException {
    Path file = ICONS.resolve("lampwright.png");
    BufferedImage drawn = drawn().get(256);
    if (WRITE) {
      Files.write(file, png(drawn));
    }
    assertSame(Files.readAllBytes(file), drawn);
  }

  /** ICO: a head of 6 bytes, 16 for each picture, then the pictures, which may be PNG. */
  @Test
  void icoHasEverySize() throws IOException {
    Path file = ICONS.resolve("lampwright.ico");
    Map<Integer, BufferedImage> drawn = drawn();
    if (WRITE) {
      writeIco(file, drawn);
    }
    ByteBuffer ico = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(ico.getShort(2)).isEqualTo((short) 1);
    assertThat(ico.getShort(4)).isEqualTo((short) drawn.size());
    for (int i = 0; i < drawn.size(); i++) {
      int at = 6 + 16 * i;
      int size = ico.get(at) == 0 ? 256 : ico.get(at) & 0xFF;
      byte[] png = new byte[ico.getInt(at + 8)];
      ico.get(ico.getInt(at + 12), png);
      assertSame(png, drawn.get(size));
    }
  }

  private static void writeIco(Path file, Map<Integer, BufferedImage> drawn) throws IOException {
    ByteBuffer head = ByteBuffer.allocate(6 + 16 * drawn.size()).order(ByteOrder.LITTLE_ENDIAN);
    head.putShort((short) 0).putShort((short) 1).putShort((short) drawn.size());
    ByteArrayOutputStream pictures = new ByteArrayOutputStream();
    for (Map.Entry<Integer, BufferedImage> each : drawn.entrySet()) {
      byte[] png = png(each.getValue());
      byte side = (byte) (int) each.getKey();
      head.put(side).put(side).put((byte) 0).put((byte) 0).putShort((short) 1).putShort((short) 32);
      head.putInt(png.length).putInt(head.capacity() + pictures.size());
      pictures.write(png);
    }
    try (var out = Files.newOutputStream(file)) {
      out.write(head.array());
      pictures.writeTo(out);
    }
  }

  /** ICNS: its name and length, then each picture as type, length and PNG. */
  @Test
  void icnsHasTheLargeSizes() throws IOException {
    Path file = ICONS.resolve("lampwright.icns");
    Map<Integer, BufferedImage> drawn = drawn();
    if (WRITE) {
      writeIcns(file, drawn);
    }
    try (DataInputStream in = new DataInputStream(Files.newInputStream(file))) {
      assertThat(new String(in.readNBytes(4), StandardCharsets.US_ASCII)).isEqualTo("icns");
      assertThat(in.readInt()).isEqualTo((int) Files.size(file));
      for (Map.Entry<Integer, String> each : new TreeMap<>(MAC_TYPES).entrySet()) {
        assertThat(new String(in.readNBytes(4), StandardCharsets.US_ASCII))
            .isEqualTo(each.getValue());
        assertSame(in.readNBytes(in.readInt() - 8), drawn.get(each.getKey()));
      }
    }
  }

  private static void writeIcns(Path file, Map<Integer, BufferedImage> drawn) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream pictures = new DataOutputStream(bytes);
    for (Map.Entry<Integer, String> each : new TreeMap<>(MAC_TYPES).entrySet()) {
      byte[] png = png(drawn.get(each.getKey()));
      pictures.writeBytes(each.getValue());
      pictures.writeInt(8 + png.length);
      pictures.write(png);
    }
    try (DataOutputStream out = new DataOutputStream(Files.newOutputStream(file))) {
      out.writeBytes("icns");
      out.writeInt(8 + bytes.size());
      bytes.writeTo(out);
    }
  }
}
