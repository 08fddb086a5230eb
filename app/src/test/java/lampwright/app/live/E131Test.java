package lampwright.app.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** ANSI E1.31: packets by the standard's own table, universes, and what is sent when. */
class E131Test {
  private static final long MS = 1_000_000;
  private static final UUID CID = UUID.fromString("12345678-9abc-4def-8123-456789abcdef");

  @TempDir private Path folder;

  private static Rig rig(int rgb, int rgbw, int outputs) {
    return Rig.of(
        List.of(
            new Chain("a", BuiltInPixelTypes.find("ws2812b").orElseThrow(), rgb),
            new Chain("b", BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), rgbw)),
        IntStream.range(0, outputs).mapToObj(i -> DriverOutput.of("o" + i)).toList(),
        List.of());
  }

  private static byte[] frame(int bytes) {
    byte[] frame = new byte[bytes];
    for (int i = 0; i < bytes; i++) {
      frame[i] = (byte) (i * 7 + 1);
    }
    return frame;
  }

  private static E131Universe universe(int slots) {
    return new E131Universe(
        E131Source.of(CID, "tug", 100), new E131Slice(1, 0, slots, "a", 0, slots));
  }

  @Test
  void packetIsThatOfTheTable() {
    E131Source source = E131Source.of(CID, "K\u00fcste", 150);
    byte[] frame = frame(20);
    E131Reader read =
        E131Reader.read(
            E131Packet.data(source, new E131Slice(0x1234, 5, 9, "a", 0, 3), 300, false, frame));
    assertThat(read.cid()).isEqualTo(CID);
    assertThat(read.name()).isEqualTo("K\u00fcste");
    assertThat(read.priority()).isEqualTo(150);
    assertThat(read.synchronization()).isZero();
    assertThat(read.sequence()).isEqualTo(300 - 256);
    assertThat(read.options()).isZero();
    assertThat(read.universe()).isEqualTo(0x1234);
    // 24 slots are no longer on a DMX512 line than fewer.
    assertThat(read.slots()).hasSize(24);
    for (int i = 0; i < 24; i++) {
      assertThat(read.slots().get(i)).isEqualTo(i < 9 ? frame[5 + i] : (byte) 0);
    }
  }

  @Test
  void fullUniverseHas638Octets() {
    byte[] packet =
        E131Packet.data(
            E131Source.of(CID, "", 100),
            new E131Slice(63_999, 0, 512, "a", 0, 128),
            0,
            true,
            frame(512));
    // ANSI E1.31-2018, table 4-1: the last octet is 637.
    assertThat(packet).hasSize(638);
    E131Reader read = E131Reader.read(packet);
    assertThat(read.options()).isEqualTo(0x40);
    assertThat(read.name()).isEqualTo("Lampwright");
  }

  @Test
  void eachChainBeginsAUniverseAndNoPixelIsCut() {
    E131Plan plan = E131Plan.of(rig(171, 129, 2), 10);
    assertThat(plan.slices())
        .containsExactly(
            new E131Slice(10, 0, 510, "a", 0, 170),
            new E131Slice(11, 510, 3, "a", 170, 1),
            new E131Slice(12, 513, 512, "b", 0, 128),
            new E131Slice(13, 1025, 4, "b", 128, 1),
            new E131Slice(14, 1029, 2, "", 0, 2));
    assertThat(E131Plan.of(rig(170, 128, 0), 1).slices()).hasSize(2);
  }

  @Test
  void universesEndWithThoseOfTheStandard() {
    assertThat(E131Plan.of(rig(1, 1, 1), 63_997).slices()).hasSize(3);
    assertThatThrownBy(() -> E131Plan.of(rig(1, 1, 1), 63_998))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> E131Plan.of(rig(1, 1, 1), 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void longNamesAreCutBetweenCharacters() {
    assertThat(E131Source.of(CID, "x".repeat(64), 100).name()).isEqualTo("x".repeat(63));
    assertThat(E131Source.of(CID, "x".repeat(62) + "\u00fc", 100).name()).isEqualTo("x".repeat(62));
    assertThat(E131Source.of(CID, "\ud83d\udea2".repeat(20), 100).name())
        .isEqualTo("\ud83d\udea2".repeat(15));
    assertThat(E131Source.of(CID, "a\u202e\u0007b", 100).name()).isEqualTo("ab");
  }

  @Test
  void groupHasTheUniverseInItsLastTwoBytes() throws IOException {
    assertThat(E131Network.group(1)).isEqualTo(InetAddress.getByName("239.255.0.1"));
    assertThat(E131Network.group(63_999)).isEqualTo(InetAddress.getByName("239.255.249.255"));
  }

  /** The least time between packets: ANSI E1.11-2008, table 6: 513 slots take 22.7 ms (44/s). */
  @Test
  void fastestIsWhatADmxLineCarries() {
    assertThat(1e9 / E131Universe.leastNanos(512)).isBetween(44.0, 44.2);
    assertThat(E131Universe.leastNanos(1)).isEqualTo(1_204_000);
  }

  @Test
  void changesGoAtOnceAndTheSameThreeTimesThenToKeepAlive() {
    E131Universe universe = universe(3);
    List<Long> sentMs = new ArrayList<>();
    List<Integer> sequences = new ArrayList<>();
    byte[] frame = {1, 2, 3};
    for (long ms = 0; ms < 4000; ms++) {
      if (ms == 2000) {
        frame = new byte[] {1, 2, 4};
      }
      var packet = universe.next(frame, ms * MS);
      if (packet.isPresent()) {
        sentMs.add(ms);
        sequences.add(E131Reader.read(packet.get()).sequence());
      }
    }
    assertThat(sentMs.subList(0, 5)).containsExactly(0L, 23L, 46L, 946L, 1846L);
    assertThat(sentMs.subList(5, 10)).containsExactly(2000L, 2023L, 2046L, 2946L, 3846L);
    assertThat(sequences).isEqualTo(IntStream.range(0, 10).boxed().toList());
  }

  @Test
  void aFullUniverseThatAlwaysChangesIsHeldTo44PerSecond() {
    E131Universe universe = universe(512);
    int sent = 0;
    for (int ms = 0; ms < 1000; ms++) {
      byte[] frame = frame(512);
      frame[0] = (byte) ms;
      frame[1] = (byte) (ms >> 8);
      sent += universe.next(frame, ms * MS).isPresent() ? 1 : 0;
    }
    assertThat(sent).isBetween(43, 45);
  }

  @Test
  void streamEndsWithThreePacketsOfEachUniverse() throws IOException {
    List<E131Reader> read = new ArrayList<>();
    E131Stream[] stream = new E131Stream[1];
    long[] now = {0};
    stream[0] =
        new E131Stream(
            E131Plan.of(rig(2, 2, 1), 1),
            E131Source.of(CID, "tug", 100),
            nanos -> new byte[15],
            (universe, packet) -> {
              E131Reader one = E131Reader.read(packet);
              assertThat(one.universe()).isEqualTo(universe);
              read.add(one);
              if (read.size() == 6) {
                stream[0].end();
              }
            },
            () -> now[0] += MS);
    stream[0].run();
    assertThat(read).hasSize(6 + 9);
    assertThat(read.subList(6, 15)).allMatch(packet -> packet.options() == 0x40);
    assertThat(read.subList(0, 6)).allMatch(packet -> packet.options() == 0);
    for (int universe = 1; universe <= 3; universe++) {
      int wanted = universe;
      assertThat(read.stream().filter(p -> p.universe() == wanted).map(E131Reader::sequence))
          .containsExactly(0, 1, 2, 3, 4);
    }
  }

  @Test
  void networkThatFailsAtOnceEndsItAndOneThatFailsForAMomentDoesNot() throws IOException {
    long[] now = {0};
    E131Plan plan = E131Plan.of(rig(1, 1, 0), 1);
    E131Source source = E131Source.of(CID, "tug", 100);
    E131Stream never =
        new E131Stream(
            plan,
            source,
            nanos -> new byte[7],
            (universe, packet) -> {
              throw new IOException("Network is unreachable");
            },
            () -> now[0] += MS);
    assertThatThrownBy(never::run).hasMessage("Network is unreachable");

    int[] calls = {0};
    E131Stream[] moment = new E131Stream[1];
    moment[0] =
        new E131Stream(
            plan,
            source,
            nanos -> new byte[7],
            (universe, packet) -> {
              calls[0]++;
              if (calls[0] > 2 && calls[0] < 6) {
                throw new IOException("Network is unreachable");
              }
              if (calls[0] == 8) {
                moment[0].end();
              }
            },
            () -> now[0] += MS);
    moment[0].run();
    assertThat(moment[0].failed()).isEqualTo(3);
  }

  @Test
  void senderIdIsKept() throws IOException {
    UUID made = SenderId.in(folder.resolve("state"));
    assertThat(SenderId.in(folder.resolve("state"))).isEqualTo(made);
    Files.writeString(folder.resolve("state/sender-id"), "nonsense");
    UUID other = SenderId.in(folder.resolve("state"));
    assertThat(other).isNotEqualTo(made);
    assertThat(SenderId.in(folder.resolve("state"))).isEqualTo(other);
  }

  /** Another reader of the standard: Wireshark's dissector of E1.31 (tshark), where it is there. */
  @Test
  void tsharkReadsEveryPacket() throws IOException {
    OutsideTools.Tool tshark = OutsideTools.optional().find("tshark", "tshark");
    E131Source source = E131Source.of(CID, "K\u00fcste", 77);
    List<byte[]> packets = new ArrayList<>();
    for (E131Slice slice : E131Plan.of(rig(171, 129, 2), 300).slices()) {
      packets.add(E131Packet.data(source, slice, packets.size(), false, frame(1031)));
      packets.add(E131Packet.data(source, slice, packets.size(), true, frame(1031)));
    }
    Path capture = folder.resolve("e131.pcap");
    Files.write(capture, pcap(packets));
    String[] fields = {
      "acn.cid",
      "acn.dmx.source_name",
      "acn.dmx.priority",
      "acn.dmx.seq_number",
      "acn.dmx.options",
      "acn.dmx.universe",
      "_ws.malformed",
      "_ws.expert.message"
    };
    List<String> words =
        new ArrayList<>(List.of("-r", capture.toString(), "--enable-heuristic", "acn"));
    words.addAll(List.of("-o", "acn.dmx_enable:TRUE", "-T", "fields", "-E", "separator=|"));
    for (String field : fields) {
      words.add("-e");
      words.add(field);
    }
    String out =
        new String(
            tshark.run(folder, words.toArray(String[]::new)).out(),
            java.nio.charset.StandardCharsets.UTF_8);
    List<String> lines = out.lines().toList();
    assertThat(lines).hasSize(packets.size());
    for (int i = 0; i < lines.size(); i++) {
      String[] values = lines.get(i).split("\\|", -1);
      assertThat(values[0]).isEqualTo(CID.toString());
      assertThat(values[1]).isEqualTo("K\u00fcste");
      assertThat(values[2]).isEqualTo("77");
      assertThat(values[3]).isEqualTo(Integer.toString(i));
      assertThat(Integer.decode(values[4])).isEqualTo(i % 2 == 0 ? 0 : 0x40);
      assertThat(values[5]).isEqualTo(Integer.toString(300 + i / 2));
      assertThat(values[6] + values[7]).isEmpty();
    }
  }

  // A capture of UDP packets from 10.0.0.1 to 10.0.0.2, each with the heads of Ethernet and IP.
  private static byte[] pcap(List<byte[]> packets) {
    int size = 24 + packets.stream().mapToInt(packet -> 16 + 42 + packet.length).sum();
    ByteBuffer file = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    file.putInt(0xA1B2C3D4).putShort((short) 2).putShort((short) 4);
    file.putInt(0).putInt(0).putInt(65_535).putInt(1);
    for (byte[] packet : packets) {
      int length = 42 + packet.length;
      file.putInt(0).putInt(0).putInt(length).putInt(length);
      ByteBuffer heads = ByteBuffer.allocate(42);
      heads.put(new byte[12]).putShort((short) 0x0800);
      heads.put((byte) 0x45).put((byte) 0).putShort((short) (length - 14)).putInt(0);
      heads.put((byte) 64).put((byte) 17).putShort((short) 0).putInt(0x0A000001).putInt(0x0A000002);
      heads.putShort((short) 5568).putShort((short) 5568);
      heads.putShort((short) (8 + packet.length)).putShort((short) 0);
      file.put(heads.array()).put(packet);
    }
    return file.array();
  }
}
