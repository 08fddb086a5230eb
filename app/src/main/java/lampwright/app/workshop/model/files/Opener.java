package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.disk.FileClaim;
import lampwright.app.workshop.disk.Recoveries;
import lampwright.app.workshop.disk.Recovery;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.json.ReadResult;

/** Puts projects on the bench, and what a crash left of them. For the screen's thread. */
final class Opener {
  private final Texts texts = Texts.of("files");
  private final Workplace place;
  private final Document document;
  private final Autosave autosave;
  private final Claims claims;
  private Optional<Path> wanted = Optional.empty();

  Opener(Workplace place, Document document, Autosave autosave, Claims claims) {
    this.place = place;
    this.document = document;
    this.autosave = autosave;
    this.claims = claims;
  }

  /** A new project. */
  void fresh() {
    fresh(Projects.fresh());
  }

  /** A new project that begins with this. */
  void fresh(Project first) {
    place.disk().run(() -> claims.hold(Optional.empty()));
    put(Optional.empty(), new Document.Saved(Optional.empty(), Optional.of(first)), first, false);
  }

  /** Shows what was found out about a file. Returns whether it is on the bench now. */
  boolean show(Opened opened) {
    Optional<Project> project = opened.project();
    if (project.isEmpty()) {
      release(opened.claim());
      place.dialogs().tell(texts.get("damaged.title", name(opened.file())), problems(opened));
      return rescue(opened);
    }
    if (opened.elsewhere() && !openTwice(opened.file())) {
      release(opened.claim());
      return false;
    }
    place.disk().run(() -> claims.hold(opened.claim()));
    Document.Saved kept = new Document.Saved(opened.hash(), project);
    put(Optional.of(opened.file()), kept, project.get(), opened.elsewhere());
    offers(opened);
    return true;
  }

  /** Says why a file could not be read at all. */
  void refuse(Path file, String words) {
    place.dialogs().tell(texts.get("damaged.title", name(file)), texts.get("damaged.text", words));
  }

  /** What can be recovered of what was left; damaged files are set aside. */
  List<Leftover> sorted(List<Opened.Offer> left) {
    List<Leftover> whole = new ArrayList<>();
    for (Opened.Offer offer : left) {
      if (offer.project().isPresent()) {
        whole.add(Leftover.of(offer));
      } else {
        setAside(offer.found().place());
      }
    }
    return whole;
  }

  /** Puts work on the bench that was never saved to a file. */
  void recover(Leftover left) {
    fresh();
    recover(left.project(), left.place());
  }

  /** The recovery file at this place is wanted: it is not asked about when its file is opened. */
  void want(Path recovery) {
    wanted = Optional.of(recovery);
  }

  /** Removes what was left, if the builder is sure. Returns whether it is gone. */
  boolean discard(Leftover left) {
    String name = left.file().map(Opener::name).orElse(texts.get("untitled"));
    boolean sure =
        place
                .dialogs()
                .choose(
                    texts.get("recover.title", name),
                    texts.get("discard.text", left.written()),
                    List.of(texts.get("recover.discard"), texts.get("cancel")))
            == 0;
    if (sure) {
      place.disk().run(() -> Opened.forget(left.place()));
    }
    return sure;
  }

  private boolean openTwice(Path file) {
    return place
            .dialogs()
            .choose(
                texts.get("twice.title", name(file)),
                texts.get("twice.text", file),
                List.of(texts.get("twice.open"), texts.get("cancel")))
        == 0;
  }

  // The file can't be used, but perhaps what was not saved of it.
  private boolean rescue(Opened opened) {
    for (Opened.Offer offer : opened.offers()) {
      if (offer.project().isPresent()) {
        int answer =
            place
                .dialogs()
                .choose(
                    texts.get("recover.title", name(opened.file())),
                    texts.get("rescue.text", opened.file(), offer.content().written()),
                    List.of(texts.get("recover.yes"), texts.get("recover.later")));
        if (answer == 0) {
          fresh();
          change(offer.project().get());
          return true;
        }
      }
    }
    return false;
  }

  private void offers(Opened opened) {
    askAll(opened);
    wanted = Optional.empty();
  }

  private void askAll(Opened opened) {
    for (Opened.Offer offer : opened.offers()) {
      if (offer.project().isEmpty()) {
        setAside(offer.found().place());
        continue;
      }
      boolean same = offer.content().savedHash().equals(opened.hash());
      boolean asked = same && wanted.equals(Optional.of(offer.found().place()));
      Answer answer =
          asked
              ? Answer.RECOVER
              : answer(offer, name(opened.file()), same ? "recover.text" : "recover.other.text");
      if (answer == Answer.RECOVER) {
        // What else was found is offered when the file is opened again.
        recover(offer);
        return;
      }
      if (answer == Answer.LATER
          && offer.found().place().equals(Recoveries.beside(opened.file()))) {
        autosave.leaveBeside();
      }
    }
  }

  private enum Answer {
    RECOVER,
    DISCARD,
    LATER
  }

  private Answer answer(Opened.Offer offer, String name, String text) {
    Recovery content = offer.content();
    int index =
        place
            .dialogs()
            .choose(
                texts.get("recover.title", name),
                texts.get(text, content.written()),
                List.of(
                    texts.get("recover.yes"),
                    texts.get("recover.discard"),
                    texts.get("recover.later")));
    Answer answer = Answer.values()[index];
    if (answer == Answer.DISCARD) {
      Path where = offer.found().place();
      place.disk().run(() -> Opened.forget(where));
    }
    return answer;
  }

  private void recover(Opened.Offer offer) {
    recover(offer.project().orElseThrow(), offer.found().place());
  }

  private void recover(Project recovered, Path where) {
    change(recovered);
    // The same is kept anew as unsaved changes of this process before the old one goes.
    autosave.takeOver(where);
  }

  private void change(Project recovered) {
    place.bench().apply(Edit.of(texts.get("edit.recover"), now -> recovered));
  }

  private void setAside(Path where) {
    place
        .disk()
        .run(
            () -> {
              String text;
              try {
                text = texts.get("recover.damaged.text", Recoveries.setAside(where));
              } catch (IOException stays) {
                text = texts.get("recover.damaged.text", where);
              }
              String shown = text;
              place
                  .screen()
                  .execute(() -> place.dialogs().tell(texts.get("recover.damaged.title"), shown));
            });
  }

  private void put(Optional<Path> file, Document.Saved kept, Project project, boolean besideTaken) {
    place.bench().open(project);
    document.belongsTo(file, kept);
    autosave.begin(besideTaken);
    document.opened();
  }

  private void release(Optional<FileClaim> claim) {
    place.disk().run(() -> claim.ifPresent(FileClaim::close));
  }

  private static String name(Path file) {
    return SafeText.text(String.valueOf(file.getFileName()), SafeText.MAX_MESSAGE);
  }

  private String problems(Opened opened) {
    List<String> lines = opened.result().map(ReadResult::lines).orElse(List.of(opened.failure()));
    return texts.get("damaged.text", String.join("\n", lines));
  }
}
