package lampwright.app.live;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;

/** The serial ports of this machine, by jSerialComm. Nothing else of the program knows it. */
public final class SerialPorts implements SerialSystem {
  private static final int DATA_BITS = 8;

  /** Longer a port that works does not keep a packet from the line. */
  private static final long WRITE_LIMIT_NANOS = TimeUnit.SECONDS.toNanos(5);

  private static final long WRITE_REST_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

  @Override
  public List<PortInfo> ports() throws LinkException {
    return byLibrary(
        () ->
            Arrays.stream(SerialPort.getCommPorts())
                .map(port -> new PortInfo(port.getSystemPortName(), port.getPortDescription()))
                .sorted(Comparator.comparing(PortInfo::name))
                .toList());
  }

  @Override
  public Transport open(String name, Baud baud) throws LinkException {
    SerialPort port;
    try {
      port = byLibrary(() -> SerialPort.getCommPort(name));
    } catch (SerialPortInvalidPortException none) {
      throw new LinkException(new LinkTrouble.NoSuchPort(name, ports()));
    }
    port.setComPortParameters(
        baud.rate(), DATA_BITS, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_NONBLOCKING, 0, 0);
    if (!port.openPort(0)) {
      int code = port.getLastErrorCode();
      throw new LinkException(
          switch (PortRefusal.of(isWindows(), code)) {
            // The library says so as well of one that this program has open already.
            case MISSING ->
                !isWindows() && Files.exists(Path.of(port.getSystemPortPath()))
                    ? new LinkTrouble.Busy(name)
                    : new LinkTrouble.NoSuchPort(name, ports());
            case NO_PERMISSION -> new LinkTrouble.NoPermission(name);
            case BUSY -> new LinkTrouble.Busy(name);
            case NO_SERIAL_PORT -> new LinkTrouble.NoSerialPort(name);
            case OTHER -> new LinkTrouble.NotOpened(name, code);
          });
    }
    port.flushIOBuffers();
    return new Opened(name, port);
  }

  private static boolean isWindows() {
    return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
  }

  // Its native code is put into a folder for temporary files when the library is first used.
  private static <T> T byLibrary(Supplier<T> work) throws LinkException {
    try {
      return work.get();
    } catch (LinkageError unusable) {
      throw new LinkException(new LinkTrouble.NoSerial(String.valueOf(unusable.getMessage())));
    }
  }

  private record Opened(String name, SerialPort port) implements Transport {
    @Override
    public int read(byte[] into) throws LinkException {
      int there = port.bytesAvailable();
      int read = there <= 0 ? there : port.readBytes(into, Math.min(there, into.length));
      if (read < 0) {
        throw lost();
      }
      return read;
    }

    @Override
    public void write(byte[] bytes) throws LinkException {
      long start = System.nanoTime();
      int done = 0;
      while (done < bytes.length) {
        int wrote = port.writeBytes(bytes, bytes.length - done, done);
        if (wrote < 0 || System.nanoTime() - start > WRITE_LIMIT_NANOS) {
          throw lost();
        }
        done += wrote;
        if (done < bytes.length) {
          LockSupport.parkNanos(WRITE_REST_NANOS);
        }
      }
    }

    private LinkException lost() {
      return new LinkException(new LinkTrouble.PortLost(name));
    }

    @Override
    public void close() {
      port.closePort();
    }
  }
}
