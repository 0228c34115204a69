// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.facts.Family;
import fourfold.facts.Prompt;
import fourfold.insight.ComingWeeks;
import fourfold.insight.Grid;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.PageChoice;
import fourfold.insight.PageContent;
import fourfold.insight.PageKind;
import fourfold.insight.PaperQuestions;
import fourfold.insight.Portfolio;
import fourfold.insight.PortfolioFold;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.store.Failure;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Pages to print for a child: chooses their content, remembers those with a number, and keeps them where they are found. */
public final class PrintPages {
    private final Store store;
    private final SessionClock moments;
    private final PracticeRecords records;
    private final LookAhead ahead;
    private final PageRegister register;
    private final Optional<Documents> documents;

    PrintPages(
            Store store,
            SessionClock moments,
            PracticeRecords records,
            LookAhead ahead,
            Optional<Documents> documents) {
        this.store = store;
        this.moments = moments;
        this.records = records;
        this.ahead = ahead;
        this.documents = documents;
        register = new PageRegister(store);
    }

    /**
     * What stands on the pages that a parent wants; none if the child has met nothing that could stand on them. Those with
     * a number are remembered.
     */
    public List<PageContent> content(Child child, PageOrder order, Instant at) {
        PageKind kind = order.kind();
        return switch (kind) {
            case TABLE -> List.of(new PageContent.Table());
            case SUPPLIES -> List.of(supplies(child, at));
            case WHOLE -> whole(child).stream().toList();
            case CANDO, REPORT ->
                List.of(new PageContent.Report(
                        kind, day(at), portfolio(child, order.period(), at), ahead.remembered(child)));
            default -> chosen(child, order, at);
        };
    }

    private PageContent supplies(Child child, Instant at) {
        Progress progress = records.progress(child);
        return new PageContent.Supplies(
                child.name(), day(at), ComingWeeks.of(Grid.of(progress, at), progress.steering(), day(at)));
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, moments.zone());
    }

    private List<PageContent> chosen(Child child, PageOrder order, Instant at) {
        Progress progress = records.progress(child);
        List<PageContent> pages = new ArrayList<>();
        for (int copy = 0; copy < order.copies(); copy++) {
            // The same question twice on a day gives the same page; each further copy is another one.
            long seed = 1000L * progress.answers() + copy;
            if (order.kind().hasFamilies()) {
                families(child, order, progress, seed, at).ifPresent(pages::add);
            } else {
                questions(child, order, progress, seed, at).ifPresent(pages::add);
            }
        }
        return pages;
    }

    private Optional<PageContent> families(Child child, PageOrder order, Progress progress, long seed, Instant at) {
        PageChoice choice = order.choice();
        List<Family> all = PaperQuestions.families(Grid.of(progress, at), choice, seed);
        int most = Math.min(all.size(), Math.min(choice.count(), order.kind().most()));
        return Optional.of(all.subList(0, most))
                .filter(f -> !f.isEmpty())
                .map(f -> new PageContent.OfFamilies(
                        order.kind(), child.name(), day(at), f, PaperQuestions.waiting(f, progress)));
    }

    private Optional<PageContent> questions(Child child, PageOrder order, Progress progress, long seed, Instant at) {
        Grid grid = Grid.of(progress, at);
        PageKind kind = order.kind();
        PageChoice choice = order.choice().withCount(Math.min(order.choice().count(), kind.most()));
        List<Prompt> prompts = PaperQuestions.signed(
                kind.isGame() ? PaperQuestions.forGame(grid, choice, seed) : PaperQuestions.of(grid, choice, seed),
                progress);
        // A game needs a few facts to be one.
        if (prompts.size() < (kind.isGame() ? 4 : 1)) {
            return Optional.empty();
        }
        int number = kind.isNumbered() ? register.number(child, kind, day(at), prompts) : 0;
        return Optional.of(new PageContent.Questions(kind, child.name(), day(at), number, prompts));
    }

    /** The last page; empty before the stairs are whole. */
    private Optional<PageContent> whole(Child child) {
        LifetimeProgress stones = records.lifetime(child);
        return stones.lastLaid()
                .filter(day -> stones.isWhole())
                .map(day -> new PageContent.Whole(child.name(), LocalDate.ofEpochDay(day)));
    }

    /**
     * What a child did and came to.
     *
     * @param period empty for all of it
     */
    public Portfolio portfolio(Child child, Optional<Portfolio.Period> period, Instant at) {
        Portfolio.Period days = period.orElseGet(() -> {
            LocalDate today = day(at);
            LocalDate first = records.sessions(child).stream()
                    .map(s -> LocalDate.ofEpochDay(s.localDay()))
                    .filter(d -> !d.isAfter(today))
                    .min(LocalDate::compareTo)
                    .orElse(today);
            return new Portfolio.Period(first, today);
        });
        PortfolioFold fold = new PortfolioFold(child.name(), days, records.actions(child));
        records.read(child, fold);
        Steering steering = records.levels(child).steering();
        List<LocalDate> ticked = steering.calendar().away().keySet().stream()
                .filter(d -> !d.isBefore(days.first()) && !d.isAfter(days.last()))
                .sorted()
                .toList();
        return fold.portfolio(steering.order(), ticked);
    }

    /** The child's pages that have a number, the newest first. */
    public List<NumberedPage> numbered(Child child) {
        return register.pages(child);
    }

    PageRegister register() {
        return register;
    }

    /** The folder into which pages go. */
    public Path folder() {
        Optional<String> named = new HouseholdSettings(store).pagesFolder();
        return named.map(Home::path)
                .or(() -> documents.map(Documents::folder))
                .orElseGet(() -> Path.of(System.getProperty("java.io.tmpdir", ".")));
    }

    /**
     * Keeps a page that was drawn, under a name for people; one that is there already, the same to the letter, is left.
     *
     * @param name without ending; what a file's name can't hold is left out of it
     * @param show whether a browser shows it, if the household wants that
     * @throws RecordsFailure if the file can't be made
     */
    public MadePage keep(String name, String html, boolean show) {
        Path folder = folder();
        Path file = folder;
        boolean before = false;
        try {
            Files.createDirectories(folder);
            file = named(folder, name, "");
            for (int number = 2; Files.exists(file) && !before; number++) {
                before = Files.readString(file).equals(html);
                file = before ? file : named(folder, name, " (" + number + ")");
            }
            if (!before) {
                NewFile.write(file, writer -> writer.write(html));
            }
        } catch (IOException e) {
            throw new RecordsFailure(RecordsFailure.Task.PRINT, Failure.shown(file), Failure.problem(e), e);
        }
        Path made = file;
        boolean shown = show
                && new HouseholdSettings(store).showsPages()
                && documents.map(d -> d.show(made)).orElse(false);
        return new MadePage(file, before, shown);
    }

    private static Path named(Path folder, String name, String number) {
        String safe = name.replaceAll("[\\p{Cntrl}\\p{Cf}/\\\\:*?\"<>|]", "").strip() + number + ".html";
        try {
            return folder.resolve(safe);
        } catch (InvalidPathException e) {
            // Where the system's setting can't write the name's letters, it is written without them.
            byte[] plain = safe.getBytes(StandardCharsets.US_ASCII);
            return folder.resolve(new String(plain, StandardCharsets.US_ASCII).replace('?', '_'));
        }
    }
}
