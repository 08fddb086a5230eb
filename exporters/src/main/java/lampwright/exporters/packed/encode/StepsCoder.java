package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;

/** Codes a stretch of a lamp's frames as one section of rows and holds. */
final class StepsCoder {
  /**
   * What a hold between rows takes: itself and the head of the rows after it, and time. Found by
   * trial: with 2 the corpus packs to 72,095 bytes in place of 72,069, with 8 to 72,081.
   */
  private static final int HOLD_BYTES = 4;

  private final LampTable table;
  private final RowPlan plan;
  private final Coding coding;
  private final Echoes echoes;
  private final EventCoder events;

  StepsCoder(LampTable table, Echoes echoes, RowPlan plan, EventCoder events, Coding coding) {
    this.echoes = echoes;
    this.table = table;
    this.plan = plan;
    this.coding = coding;
    this.events = events;
  }

  /** Numbers, in the plan's order, of what changes after the first of the frames. */
  private List<Integer> moving(int from, int to) {
    List<Integer> moving = new ArrayList<>();
    for (int i = 0; i < plan.slots.size(); i++) {
      byte[] v = table.values[table.slots.get(plan.slots.get(i))[0]];
      for (int f = from + 1; f < to; f++) {
        if (v[f] != v[from]) {
          moving.add(i);
          break;
        }
      }
    }
    return moving;
  }

  private List<Grouping.Run> runs(List<Integer> moving) {
    List<Grouping.Run> runs = Grouping.runs(moving.stream().map(i -> plan.column[i]).toList());
    if (runs.size() > 255) {
      throw new TooManyPartsException("runs", runs.size());
    }
    return runs;
  }

  private void writeEchoes(ByteSink out, List<Integer> moving) {
    echoes.write(out, coding, moving.stream().map(plan.slots::get).toList());
  }

  /** Every row whole, unpacked. */
  Section raw(int from, int to) {
    List<Integer> moving = moving(from, to);
    List<Grouping.Run> runs = runs(moving);
    ByteSink head = new ByteSink().u8(runs.size());
    for (Grouping.Run run : runs) {
      run.write(head, coding);
    }
    writeEchoes(head, moving);
    ByteSink out = new ByteSink();
    Format.writeKind(out, Format.RAW, head.size());
    out.all(head.toBytes());
    events.writeKey(out, from);
    EventCoder.writeHold(out, 1);
    for (int f = from + 1; f < to; ) {
      int until = Math.min(to, f + Format.MAX_ROWS);
      out.u8(Format.ROWS).u8(until - f);
      for (; f < until; f++) {
        for (int i : moving) {
          out.u8(table.at(table.indexOf[plan.column[i]], f));
        }
      }
    }
    out.u8(Format.AGAIN);
    return new Section(out.toBytes(), List.of());
  }

  /** The predictor, width and bias with the fewest bits over rows from + 1 to to. */
  private record Rule(int predictor, int width, int bias) {}

  private Rule rule(int strip, int from, int to) {
    Rule best = null;
    for (int p = 0; p < RowPlan.PREDICTORS; p++) {
      short[] rest = plan.rest[strip][p];
      if (rest == null) {
        continue;
      }
      int least = Integer.MAX_VALUE;
      int most = Integer.MIN_VALUE;
      for (int f = from + 1; f < to; f++) {
        least = Math.min(least, rest[f]);
        most = Math.max(most, rest[f]);
      }
      int width = RowPlan.width(least, most);
      if (width <= 8 && (best == null || width < best.width())) {
        best = new Rule(p, width, least);
      }
    }
    return Objects.requireNonNull(best);
  }

  /** Changed frames as bits; with a flag before each row if flagged. */
  Section rows(int from, int to, boolean flagged) {
    List<Integer> moving = moving(from, to);
    List<Grouping.Run> runs = runs(moving);
    ByteSink head = new ByteSink().u8(runs.size());
    Rule[] rules = new Rule[moving.size()];
    int rowBits = 0;
    int k = 0;
    for (Grouping.Run run : runs) {
      run.write(head, coding);
      for (int slot = 0; slot < run.slots(); slot++, k++) {
        int i = moving.get(k);
        Rule rule = rule(i, from, to);
        rules[k] = rule;
        rowBits += rule.width();
        head.u8(rule.predictor() << 4 | rule.width()).u8(rule.bias());
        if (rule.predictor() == 2) {
          head.number(plan.sourceColumn[i], coding.columnBytes()).u8(plan.factor[i]);
        }
      }
    }
    writeEchoes(head, moving);
    ByteSink out = new ByteSink();
    Format.writeKind(out, Format.STEPS | (flagged ? Format.FLAGGED : 0), head.size());
    out.all(head.toBytes());
    events.writeKey(out, from);
    int stillBits = flagged ? 1 : Math.max(1, rowBits);
    int worthHolding = HOLD_BYTES * 8 / stillBits + 1;
    int f = events.stillUntil(from + 1, to);
    EventCoder.writeHold(out, f - from);
    while (f < to) {
      int end = f + 1;
      int quiet = events.stillUntil(end, to);
      while (quiet < to && quiet - end < worthHolding) {
        end = quiet + 1;
        quiet = events.stillUntil(end, to);
      }
      writeRows(out, f, end, moving, rules, flagged);
      EventCoder.writeHold(out, quiet - end);
      f = quiet;
    }
    out.u8(Format.AGAIN);
    return new Section(out.toBytes(), List.of());
  }

  private void writeRows(
      ByteSink out, int from, int to, List<Integer> moving, Rule[] rules, boolean flagged) {
    int f = from;
    while (f < to) {
      int until = Math.min(to, f + Format.MAX_ROWS);
      out.u8(Format.ROWS).u8(until - f);
      BitSink bits = new BitSink(out);
      for (; f < until; f++) {
        if (flagged) {
          boolean quiet = table.still(f);
          bits.put(quiet ? 0 : 1, 1);
          if (quiet) {
            continue;
          }
        }
        for (int k = 0; k < rules.length; k++) {
          Rule rule = rules[k];
          bits.put(plan.rest[moving.get(k)][rule.predictor()][f] - rule.bias(), rule.width());
        }
      }
      bits.flush();
    }
  }
}
