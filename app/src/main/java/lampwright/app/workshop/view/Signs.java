package lampwright.app.workshop.view;

/** Signs of our own as outlines, 14 pixels high: severity is told by shape, not by colour alone. */
final class Signs {
  /** A diamond: over a limit. */
  static final String DANGER = "M7,0L14,7L7,14L0,7zM6.2,3.2h1.6v4.8h-1.6zM6.2,9.2h1.6v1.6h-1.6z";

  /** A triangle: near a limit, or unsafe to watch. */
  static final String WARNING = "M7,0.5L14,13.5H0zM6.2,4.6h1.6v4.6h-1.6zM6.2,10.2h1.6v1.6h-1.6z";

  /** A lamp, the program's own mark, 24 by 28 pixels. */
  static final String LAMP =
      "M12,3a8,8 0 0 1 5,14.2q-1,0.9 -1.2,2.8h-7.600q-0.200,-1.900 -1.200,-2.800a8,8 0 0 1 5,-14.200z"
          + "M8.500,22.500h7M9.500,25h5M12,9v4M9,12l3,3l3,-3";

  private Signs() {}
}
