package lampwright.app.workshop.view.help;

import com.google.common.base.Splitter;
import java.net.URL;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;
import lampwright.app.help.Manual;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.Emphasis;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.Link;
import org.commonmark.node.ListBlock;
import org.commonmark.node.ListItem;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.StrongEmphasis;

/** One page of the manual as nodes. HTML in a page, which ours only use for notes, is left out. */
final class PageView extends VBox {
  private static final double PICTURE_WIDTH = 640;
  private static final int LONGEST_WEIGHT = 48;
  private static final int LEAST_WEIGHT = 6;
  private static final double WORD_WEIGHT = 1.5;
  private static final Splitter WORDS = Splitter.on(' ');

  private final Map<String, Node> anchors = new HashMap<>();
  private final Consumer<Manual.Place> follow;
  private final String page;

  /**
   * @param follow is given the target of a link to a page
   */
  PageView(Manual.Page page, Consumer<Manual.Place> follow) {
    super(10);
    this.follow = follow;
    this.page = page.id();
    getStyleClass().add("help-page");
    page.text().accept(new Blocks(this));
  }

  /** What a link's anchor, or a code in a table, is at. */
  Optional<Node> at(String anchor) {
    return Optional.ofNullable(anchors.get(anchor));
  }

  /** Puts the blocks of a node into a pane. */
  private final class Blocks extends AbstractVisitor {
    private final Pane into;

    Blocks(Pane into) {
      this.into = into;
    }

    @Override
    public void visit(Heading heading) {
      Label label = new Label(Manual.plain(heading));
      label.setWrapText(true);
      label.getStyleClass().addAll("help-heading", "help-heading-" + heading.getLevel());
      anchors.putIfAbsent(Manual.anchor(heading), label);
      into.getChildren().add(label);
    }

    @Override
    public void visit(Paragraph paragraph) {
      into.getChildren().add(flow(paragraph));
    }

    @Override
    public void visit(BlockQuote quote) {
      into.getChildren().add(flow(quote));
    }

    @Override
    public void visit(FencedCodeBlock code) {
      code(code.getLiteral());
    }

    @Override
    public void visit(IndentedCodeBlock code) {
      code(code.getLiteral());
    }

    private void code(String text) {
      Label label = new Label(text.stripTrailing());
      label.getStyleClass().add("help-block");
      into.getChildren().add(label);
    }

    @Override
    public void visit(BulletList list) {
      list(list, false);
    }

    @Override
    public void visit(OrderedList list) {
      list(list, true);
    }

    private void list(ListBlock list, boolean numbered) {
      VBox items = new VBox(4);
      items.setPadding(new Insets(0, 0, 0, 12));
      list.accept(
          new AbstractVisitor() {
            private int number = 1;

            @Override
            public void visit(ListItem item) {
              VBox text = new VBox(4);
              HBox.setHgrow(text, Priority.ALWAYS);
              Blocks inner = new Blocks(text);
              for (var part = item.getFirstChild(); part != null; part = part.getNext()) {
                part.accept(inner);
              }
              Label sign = new Label(numbered ? number++ + "." : "\u2022");
              sign.setMinWidth(USE_PREF_SIZE);
              items.getChildren().add(new HBox(8, sign, text));
            }
          });
      into.getChildren().add(items);
    }

    @Override
    public void visit(CustomBlock block) {
      if (block instanceof TableBlock table) {
        into.getChildren().add(table(table));
      }
    }

    private TextFlow flow(org.commonmark.node.Node of) {
      TextFlow flow = new TextFlow();
      flow.getStyleClass().add("help-text");
      inline(of, flow);
      return flow;
    }
  }

  private GridPane table(TableBlock table) {
    List<List<TableCell>> rows = new ArrayList<>();
    table.accept(
        new AbstractVisitor() {
          @Override
          public void visit(org.commonmark.node.CustomNode node) {
            if (node instanceof TableRow) {
              rows.add(new ArrayList<>());
            } else if (node instanceof TableCell cell) {
              rows.get(rows.size() - 1).add(cell);
            }
            visitChildren(node);
          }
        });
    GridPane grid = new GridPane();
    grid.getStyleClass().add("help-table");
    widths(rows, grid);
    for (int row = 0; row < rows.size(); row++) {
      for (int column = 0; column < rows.get(row).size(); column++) {
        TableCell cell = rows.get(row).get(column);
        TextFlow flow = new TextFlow();
        flow.getStyleClass().addAll("help-cell", row == 0 ? "help-cell-head" : "help-cell-body");
        inline(cell, flow);
        grid.add(flow, column, row);
        if (column == 0 && row > 0) {
          anchors.putIfAbsent(Manual.plain(cell), flow);
        }
      }
    }
    return grid;
  }

  // Columns share the width by the longest text of each, so that all of a table is in sight.
  private static void widths(List<List<TableCell>> rows, GridPane grid) {
    int columns = rows.stream().mapToInt(List::size).max().orElse(0);
    double[] weights = new double[columns];
    double sum = 0;
    for (int column = 0; column < columns; column++) {
      int at = column;
      List<String> cells =
          rows.stream()
              .filter(row -> row.size() > at)
              .map(row -> Manual.plain(row.get(at)))
              .toList();
      int longest = cells.stream().mapToInt(String::length).max().orElse(0);
      // No word is broken, so that codes are read whole.
      double word =
          WORD_WEIGHT
              * cells.stream()
                  .flatMap(cell -> WORDS.splitToStream(cell))
                  .mapToInt(String::length)
                  .max()
                  .orElse(0);
      weights[column] = Math.max(Math.max(LEAST_WEIGHT, word), Math.min(LONGEST_WEIGHT, longest));
      sum += weights[column];
    }
    for (double weight : weights) {
      ColumnConstraints constraints = new ColumnConstraints();
      constraints.setPercentWidth(100 * weight / sum);
      grid.getColumnConstraints().add(constraints);
    }
  }

  private void inline(org.commonmark.node.Node of, TextFlow flow) {
    of.accept(new Inline(flow));
  }

  /** Puts what is within a line into a flow of text. */
  private final class Inline extends AbstractVisitor {
    private final TextFlow flow;
    private String style = "help-plain";

    Inline(TextFlow flow) {
      this.flow = flow;
    }

    private void add(String text, String of) {
      Text node = new Text(text);
      node.getStyleClass().add(of);
      flow.getChildren().add(node);
    }

    @Override
    public void visit(org.commonmark.node.Text text) {
      add(text.getLiteral(), style);
    }

    @Override
    public void visit(Code code) {
      add(code.getLiteral(), "help-code");
    }

    @Override
    public void visit(Emphasis emphasis) {
      within("help-emphasis", emphasis);
    }

    @Override
    public void visit(StrongEmphasis emphasis) {
      within("help-strong", emphasis);
    }

    private void within(String inner, org.commonmark.node.Node of) {
      String before = style;
      style = inner;
      visitChildren(of);
      style = before;
    }

    @Override
    public void visit(SoftLineBreak line) {
      add(" ", style);
    }

    @Override
    public void visit(HardLineBreak line) {
      add("\n", style);
    }

    @Override
    public void visit(Link link) {
      String to = link.getDestination();
      Optional<Manual.Place> place = Manual.target(page, to);
      if (place.isPresent()) {
        Hyperlink node = new Hyperlink(Manual.plain(link));
        node.setOnAction(event -> follow.accept(place.get()));
        flow.getChildren().add(node);
        return;
      }
      visitChildren(link);
      if (to.startsWith("https:")) {
        add(" (" + to + ")", style);
      }
    }

    @Override
    public void visit(org.commonmark.node.Image image) {
      Optional<URL> there = Manual.picture(image.getDestination());
      String words = Manual.plain(image);
      if (there.isEmpty()) {
        add(words, "help-emphasis");
        return;
      }
      ImageView view = new ImageView(new Image(there.get().toExternalForm(), true));
      view.setPreserveRatio(true);
      view.setFitWidth(PICTURE_WIDTH);
      view.setAccessibleText(words);
      flow.getChildren().add(view);
    }
  }
}
