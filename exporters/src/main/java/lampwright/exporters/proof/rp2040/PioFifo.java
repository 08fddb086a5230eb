package lampwright.exporters.proof.rp2040;

/** A queue between core and state machine: of four words, of eight if it has both, or of none. */
final class PioFifo {
  static final int WORDS = 4;

  private final int[] words = new int[2 * WORDS];
  private int capacity = WORDS;
  private int first;
  private int count;

  void resize(int newCapacity) {
    capacity = newCapacity;
    first = 0;
    count = 0;
  }

  int count() {
    return count;
  }

  boolean isEmpty() {
    return count == 0;
  }

  boolean isFull() {
    return count >= capacity;
  }

  void push(int word) {
    words[(first + count) % words.length] = word;
    count++;
  }

  int pop() {
    int word = words[first];
    first = (first + 1) % words.length;
    count--;
    return word;
  }
}
