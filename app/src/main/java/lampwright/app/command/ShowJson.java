package lampwright.app.command;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.rig.Rig;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.target.Memory;
import lampwright.exporters.target.Target;
import tools.jackson.core.JsonGenerator;

/** What situations ask together, for other programs. */
final class ShowJson {
  private final JsonGenerator json;
  private final BiConsumer<String, Double> number;

  /**
   * @param number writes a figure under a name
   */
  ShowJson(JsonGenerator json, BiConsumer<String, Double> number) {
    this.json = json;
    this.number = number;
  }

  void write(Rig rig, ShowMeasure show, Optional<FirmwareMemory.Taken> taken) {
    json.writeObjectPropertyStart("situations");
    json.writeObjectPropertyStart("supply");
    bound(show.supply());
    number.accept("limitMilliamps", rig.supplyLimitMilliamps());
    show.ceilingShare(rig).ifPresent(share -> number.accept("ceilingShare", share));
    json.writeEndObject();
    json.writeArrayPropertyStart("chains");
    for (ShowMeasure.Bound chain : show.chains()) {
      json.writeStartObject();
      json.writeStringProperty("id", chain.id());
      bound(chain);
      json.writeEndObject();
    }
    json.writeEndArray();
    show.flashes().ifPresent(this::flashes);
    json.writeArrayPropertyStart("darkLamps");
    show.darkLamps().forEach(json::writeString);
    json.writeEndArray();
    taken.ifPresent(all -> memory(Target.of(rig).memory(), all));
    json.writeEndObject();
  }

  private void memory(Memory memory, FirmwareMemory.Taken taken) {
    json.writeObjectPropertyStart("memory");
    json.writeNumberProperty("programBytes", taken.programBytes());
    memory.freeFlashBytes().ifPresent(most -> json.writeNumberProperty("programBytesLimit", most));
    json.writeNumberProperty("workingBytes", taken.ramBytes());
    memory.ramBytes().ifPresent(most -> json.writeNumberProperty("workingBytesLimit", most));
    json.writeEndObject();
  }

  private void bound(ShowMeasure.Bound bound) {
    number.accept("mostMilliamps", bound.milliamps());
    json.writeBooleanProperty("exact", bound.exact());
    names(bound.situations());
  }

  private void flashes(ShowMeasure.Flashes flashes) {
    json.writeObjectPropertyStart("flashes");
    json.writeNumberProperty("mostGeneralFlashesInASecond", flashes.perSecond());
    json.writeNumberProperty("limit", FlashCaution.MOST_FLASHES);
    names(flashes.situations());
    json.writeEndObject();
  }

  private void names(List<String> situations) {
    json.writeArrayPropertyStart("active");
    situations.forEach(json::writeString);
    json.writeEndArray();
  }
}
