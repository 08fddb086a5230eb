package lampwright.app.workshop.view;

import java.util.List;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.layout.Pane;

/** Cards in columns of one width that fill the room, in rows that are as full as can be. */
public final class EvenColumns extends Pane {
  private final double least;
  private final double most;
  private final double gap;
  private final int mostColumns;

  /**
   * @param least width of a column
   * @param most width of a column; what is wider stays empty at the right
   * @param mostColumns however wide it is
   */
  public EvenColumns(double least, double most, double gap, int mostColumns) {
    this.mostColumns = mostColumns;
    this.least = least;
    this.most = most;
    this.gap = gap;
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  private int columns(double width) {
    int count = Math.max(1, getManagedChildren().size());
    int fit =
        (int)
            Math.max(
                1,
                Math.min(Math.min(count, mostColumns), Math.floor((width + gap) / (least + gap))));
    int rows = (count + fit - 1) / fit;
    // Few cards do not grow beyond their most; many are spread evenly over the rows.
    return (count + rows - 1) / rows;
  }

  private double column(double width, int columns) {
    return snapSizeX(Math.min(most, Math.floor((width - gap * (columns - 1)) / columns)));
  }

  private double rowHeight(int row, int columns, double column) {
    List<Node> all = getManagedChildren();
    double height = 0;
    for (int k = row * columns; k < Math.min(all.size(), (row + 1) * columns); k++) {
      height = Math.max(height, all.get(k).prefHeight(column));
    }
    return snapSizeY(height);
  }

  @Override
  protected double computeMinWidth(double height) {
    return least;
  }

  @Override
  protected double computePrefWidth(double height) {
    return least;
  }

  @Override
  protected double computePrefHeight(double width) {
    double room = width < 0 ? getWidth() : width;
    int columns = columns(room);
    int rows = (getManagedChildren().size() + columns - 1) / columns;
    double height = Math.max(0, rows - 1) * gap;
    for (int row = 0; row < rows; row++) {
      height += rowHeight(row, columns, column(room, columns));
    }
    return height;
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected void layoutChildren() {
    int columns = columns(getWidth());
    double column = column(getWidth(), columns);
    List<Node> all = getManagedChildren();
    double y = 0;
    for (int row = 0; row * columns < all.size(); row++) {
      double height = rowHeight(row, columns, column);
      for (int k = row * columns; k < Math.min(all.size(), (row + 1) * columns); k++) {
        all.get(k).resizeRelocate((k - row * columns) * (column + gap), y, column, height);
      }
      y += height + gap;
    }
  }
}
