package lampwright.app.command;

import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import lampwright.engine.meter.ChainFeed;
import lampwright.engine.meter.OutputCircuit;
import lampwright.engine.meter.PackLoad;
import lampwright.engine.meter.SeriesResistor;
import tools.jackson.core.JsonGenerator;

/** The figures of battery, supply wires, fuses and driver outputs for other programs. */
final class PowerJson {
  private final JsonGenerator json;
  private final BiConsumer<String, Double> number;

  /**
   * Writes into an object that is open.
   *
   * @param number writes a field with a number
   */
  PowerJson(JsonGenerator json, BiConsumer<String, Double> number) {
    this.json = json;
    this.number = number;
  }

  void pack(PackLoad pack) {
    optional("batteryHours", pack.hours());
    number.accept("batteryMeanMilliamps", pack.meanMilliamps());
    number.accept("batteryPeakMilliamps", pack.peakMilliamps());
    optional("batteryFuseAmps", pack.fuseAmps());
  }

  void feed(ChainFeed feed) {
    json.writeObjectPropertyStart("voltage");
    number.accept("firstVolts", feed.leastVolts().get(0));
    number.accept("lowestVolts", feed.lowestVolts());
    json.writeNumberProperty("lowestPixel", feed.lowestPixel());
    json.writeNumberProperty("lowestFrame", feed.lowestFrame());
    number.accept("neededVolts", feed.neededVolts());
    for (int pixel = 0; pixel < feed.leastVolts().length(); pixel++) {
      if (feed.leastVolts().get(pixel) < feed.neededVolts()) {
        json.writeNumberProperty("firstPixelBelow", pixel);
        break;
      }
    }
    // The lead that would do as the chain is fed now.
    feed.remedies().stream()
        .filter(remedy -> remedy.ends() == feed.feed().ends())
        .forEach(remedy -> number.accept("neededMm2", remedy.mm2()));
    number.accept("feedAmps", feed.lead().amps());
    json.writeNumberProperty("feedFrame", feed.lead().frame());
    number.accept("feedLimitAmps", feed.lead().limitAmps());
    number.accept("stripAmps", feed.strip().amps());
    json.writeNumberProperty("stripFrame", feed.strip().frame());
    number.accept("stripLimitAmps", feed.strip().limitAmps());
    optional("fuseAmps", feed.fuse());
    if (!feed.remedies().isEmpty()) {
      json.writeArrayPropertyStart("remedies");
      feed.remedies().forEach(this::remedy);
      json.writeEndArray();
    }
    json.writeEndObject();
  }

  private void remedy(ChainFeed.Remedy remedy) {
    json.writeStartObject();
    json.writeStringProperty("ends", remedy.ends().key());
    json.writeNumberProperty("awg", remedy.awg());
    number.accept("mm2", remedy.mm2());
    number.accept("lowestVolts", remedy.lowestVolts());
    number.accept("feedAmps", remedy.leadAmps());
    optional("fuseAmps", remedy.fuseAmps());
    json.writeEndObject();
  }

  void circuit(OutputCircuit circuit) {
    number.accept("stringVolts", circuit.stringVolts());
    number.accept("headroomVolts", circuit.headroomVolts());
    circuit.resistor().ifPresent(this::resistor);
  }

  private void resistor(SeriesResistor resistor) {
    json.writeObjectPropertyStart("resistor");
    number.accept("exactOhms", resistor.exactOhms());
    number.accept("ohms", resistor.ohms());
    number.accept("watts", resistor.watts());
    optional("ratingWatts", resistor.ratingWatts());
    number.accept("milliamps", resistor.milliamps());
    number.accept("dropVolts", resistor.dropVolts());
    number.accept("milliampsAtHighSupply", resistor.milliampsAtHighSupply());
    json.writeEndObject();
  }

  private void optional(String name, OptionalDouble value) {
    value.ifPresent(v -> number.accept(name, v));
  }
}
