package lampwright.exporters.packed.encode;

import com.google.common.primitives.ImmutableIntArray;

/**
 * How quick the code of one lamp has to be in each of its pieces: 0 for the shortest code, up to
 * {@link #MOST} for the least work of the player.
 *
 * @param byPiece levels of the first pieces; those behind them have 0
 */
record SpeedLevels(ImmutableIntArray byPiece) {
  static final int MOST = 3;

  /** The shortest code throughout. */
  static final SpeedLevels NONE = new SpeedLevels(ImmutableIntArray.of());

  int at(int piece) {
    return piece < byPiece.length() ? byPiece.get(piece) : 0;
  }

  /** The quickest that any piece has to be. */
  int most() {
    return byPiece.stream().max().orElse(0);
  }

  /** One more for a piece that is below {@link #MOST}. */
  SpeedLevels raised(int piece) {
    int[] more = new int[Math.max(piece + 1, byPiece.length())];
    for (int i = 0; i < more.length; i++) {
      more[i] = at(i) + (i == piece ? 1 : 0);
    }
    Limits.check("speed level", more[piece], 1, MOST);
    return new SpeedLevels(ImmutableIntArray.copyOf(more));
  }
}
