package lampwright.exporters.proof.rp2040;

/** Which instruction a half word is: ARMv6-M Architecture Reference Manual, A5.2; from memory. */
final class Opcode {
  static final byte UNDEFINED = 0;
  static final byte LSL_IMM = 1;
  static final byte LSR_IMM = 2;
  static final byte ASR_IMM = 3;
  static final byte ADD_REG = 4;
  static final byte SUB_REG = 5;
  static final byte ADD_3 = 6;
  static final byte SUB_3 = 7;
  static final byte MOV_8 = 8;
  static final byte CMP_8 = 9;
  static final byte ADD_8 = 10;
  static final byte SUB_8 = 11;
  static final byte DATA = 12;
  static final byte ADD_HIGH = 13;
  static final byte CMP_HIGH = 14;
  static final byte MOV_HIGH = 15;
  static final byte BX = 16;
  static final byte BLX = 17;
  static final byte LDR_PC = 18;
  static final byte STR = 19;
  static final byte STRH = 20;
  static final byte STRB = 21;
  static final byte LDRSB = 22;
  static final byte LDR = 23;
  static final byte LDRH = 24;
  static final byte LDRB = 25;
  static final byte LDRSH = 26;
  static final byte STR_5 = 27;
  static final byte LDR_5 = 28;
  static final byte STRB_5 = 29;
  static final byte LDRB_5 = 30;
  static final byte STRH_5 = 31;
  static final byte LDRH_5 = 32;
  static final byte STR_SP = 33;
  static final byte LDR_SP = 34;
  static final byte ADR = 35;
  static final byte ADD_RD_SP = 36;
  static final byte ADD_SP = 37;
  static final byte SUB_SP = 38;
  static final byte EXTEND = 39;
  static final byte REVERSE = 40;
  static final byte PUSH = 41;
  static final byte POP = 42;
  static final byte STM = 43;
  static final byte LDM = 44;
  static final byte B_COND = 45;
  static final byte B = 46;
  static final byte CPS = 47;
  static final byte HINT = 48;
  static final byte SVC = 49;
  static final byte LONG = 50;
  static final byte BKPT = 51;

  private static final byte[] TABLE = new byte[0x10000];

  static {
    for (int op = 0; op < TABLE.length; op++) {
      TABLE[op] = decode(op);
    }
  }

  private Opcode() {}

  static byte of(int halfWord) {
    return TABLE[halfWord];
  }

  private static byte decode(int op) {
    int group = op >>> 11;
    if (group < 3) {
      return (byte) (LSL_IMM + group);
    }
    if (group == 3) {
      return (byte) (ADD_REG + (op >>> 9 & 3));
    }
    if (group < 8) {
      return (byte) (MOV_8 + group - 4);
    }
    return switch (group) {
      case 8 -> special(op);
      case 9 -> LDR_PC;
      case 10, 11 -> (byte) (STR + (op >>> 9 & 7));
      case 12, 13, 14, 15, 16, 17 -> (byte) (STR_5 + group - 12);
      case 18 -> STR_SP;
      case 19 -> LDR_SP;
      case 20 -> ADR;
      case 21 -> ADD_RD_SP;
      case 22, 23 -> miscellaneous(op);
      case 24 -> (op & 0xFF) == 0 ? UNDEFINED : STM;
      case 25 -> (op & 0xFF) == 0 ? UNDEFINED : LDM;
      case 26, 27 ->
          switch (op >>> 8 & 15) {
            case 14 -> UNDEFINED;
            case 15 -> SVC;
            default -> B_COND;
          };
      case 28 -> B;
      case 30 -> LONG;
      default -> UNDEFINED;
    };
  }

  private static byte special(int op) {
    return switch (op >>> 8 & 7) {
      case 4 -> ADD_HIGH;
      case 5 -> CMP_HIGH;
      case 6 -> MOV_HIGH;
      case 7 -> (op & 7) != 0 || (op >>> 3 & 15) == 15 ? UNDEFINED : (op & 0x80) == 0 ? BX : BLX;
      default -> DATA;
    };
  }

  private static byte miscellaneous(int op) {
    return switch (op >>> 8 & 15) {
      case 0 -> (op & 0x80) == 0 ? ADD_SP : SUB_SP;
      case 2 -> EXTEND;
      case 4, 5 -> (op & 0x1FF) == 0 ? UNDEFINED : PUSH;
      case 6 -> (op & 0xFFEF) == 0xB662 ? CPS : UNDEFINED;
      case 10 -> (op >>> 6 & 3) == 2 ? UNDEFINED : REVERSE;
      case 12, 13 -> (op & 0x1FF) == 0 ? UNDEFINED : POP;
      case 14 -> BKPT;
      case 15 -> (op & 15) != 0 || (op >>> 4 & 15) > 4 ? UNDEFINED : HINT;
      default -> UNDEFINED;
    };
  }
}
