package lampwright.app.live;

/** Why a system does not open a port. */
enum PortRefusal {
  MISSING,
  NO_PERMISSION,
  BUSY,
  NO_SERIAL_PORT,
  OTHER;

  /**
   * By the number of the system's error.
   *
   * @param windows whether it is one of Windows' (System Error Codes), or else one of errno's
   *     (Linux errno.h, and those of macOS and BSD that differ)
   */
  static PortRefusal of(boolean windows, int code) {
    return windows ? ofWindows(code) : ofErrno(code);
  }

  private static PortRefusal ofErrno(int code) {
    return switch (code) {
      case 2, 6, 19 -> MISSING; // ENOENT, ENXIO, ENODEV
      case 1, 13 -> NO_PERMISSION; // EPERM, EACCES
      case 11, 16, 35 -> BUSY; // EAGAIN, EBUSY, EAGAIN of macOS
      case 22, 25 -> NO_SERIAL_PORT; // EINVAL, ENOTTY
      default -> OTHER;
    };
  }

  // A port that another program has open is denied to all others there.
  private static PortRefusal ofWindows(int code) {
    return switch (code) {
      case 2, 3 -> MISSING; // ERROR_FILE_NOT_FOUND, ERROR_PATH_NOT_FOUND
      case 5, 32 -> BUSY; // ERROR_ACCESS_DENIED, ERROR_SHARING_VIOLATION
      case 1, 87 -> NO_SERIAL_PORT; // ERROR_INVALID_FUNCTION, ERROR_INVALID_PARAMETER
      default -> OTHER;
    };
  }
}
