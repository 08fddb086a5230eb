package lampwright.app.live;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.StandardSocketOptions;
import java.net.UnknownHostException;
import java.util.Optional;
import lampwright.engine.check.SafeText;

/** Sends universes to one host, or each to the multicast group that it has. */
public final class E131Network implements AutoCloseable {
  /** Takes the packets of universes. */
  @FunctionalInterface
  public interface Sender {
    void send(int universe, byte[] packet) throws IOException;
  }

  /** Groups are reached through routers that pass them on, should there be any. */
  private static final int HOPS = 8;

  private final DatagramSocket socket;
  private final Optional<InetAddress> host;

  private E131Network(DatagramSocket socket, Optional<InetAddress> host) {
    this.socket = socket;
    this.host = host;
  }

  /**
   * Sends to a host.
   *
   * @throws IOException if there is no such host
   */
  public static E131Network unicast(String host) throws IOException {
    InetAddress address;
    try {
      address = InetAddress.getByName(host);
    } catch (UnknownHostException unknown) {
      throw new IOException(SafeText.text(host) + ": no such host", unknown);
    }
    return new E131Network(new DatagramSocket(), Optional.of(address));
  }

  /**
   * Sends to multicast groups.
   *
   * @param by the network interface, such as {@code eth0}; none: the system's choice
   * @throws IOException if there is no such interface
   */
  public static E131Network multicast(Optional<String> by) throws IOException {
    DatagramSocket socket = new DatagramSocket();
    try {
      socket.setOption(StandardSocketOptions.IP_MULTICAST_TTL, HOPS);
      if (by.isPresent()) {
        NetworkInterface found = NetworkInterface.getByName(by.get());
        if (found == null) {
          throw new IOException(SafeText.text(by.get()) + ": no such network interface");
        }
        socket.setOption(StandardSocketOptions.IP_MULTICAST_IF, found);
      }
      return new E131Network(socket, Optional.empty());
    } catch (IOException failed) {
      socket.close();
      throw failed;
    }
  }

  /** The group of a universe: 239.255 and its two bytes (ANSI E1.31-2018, 9.3.1). */
  static InetAddress group(int universe) throws UnknownHostException {
    return InetAddress.getByAddress(
        new byte[] {(byte) 239, (byte) 255, (byte) (universe >> Byte.SIZE), (byte) universe});
  }

  /** Sends a packet of a universe. */
  public void send(int universe, byte[] packet) throws IOException {
    InetAddress to = host.isPresent() ? host.get() : group(universe);
    socket.send(
        new DatagramPacket(packet, packet.length, new InetSocketAddress(to, E131Packet.PORT)));
  }

  @Override
  public void close() {
    socket.close();
  }
}
