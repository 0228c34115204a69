// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.progress.Setting;
import fourfold.progress.Steering;
import fourfold.store.Store;
import fourfold.terminal.Theme;
import fourfold.terminal.WindowSize;
import java.util.Optional;

/** What is set for the whole household. */
public final class HouseholdSettings {
    /** Where the home's settings hold columns and rows of the window. */
    private static final String WINDOW = "window";

    private static final String LANGUAGE = "language";

    private static final String THEME = "theme";

    private static final String MOTION = "motion";

    private static final String STILL = "still";

    /** What is remembered in place of a language or a theme if the system's is wanted. */
    private static final String SYSTEM = "system";

    private static final String PAGES = "documents";

    private static final String PAGES_SHOWN = "documents.shown";

    private static final String PARENTS_PAGES = "parents.pages";

    private static final String SENTENCES = "sentences";

    private static final String NO = "no";

    private final Store store;

    HouseholdSettings(Store store) {
        this.store = store;
    }

    /**
     * The language that was set, as an ISO 639 code; empty for the system's.
     *
     * @throws RecordsFailure if it can't be read
     */
    public Optional<String> language() {
        return store.homeSetting(LANGUAGE).filter(set -> !set.equals(SYSTEM));
    }

    /**
     * Sets the language of the household, or the system's.
     *
     * @param code an ISO 639 code; empty for the system's
     * @throws RecordsFailure if the file does not take it
     */
    public void setLanguage(Optional<String> code) {
        store.keepHomeSetting(LANGUAGE, code.orElse(SYSTEM));
    }

    /**
     * The theme that was set; empty for one that fits the terminal.
     *
     * @throws RecordsFailure if it can't be read
     */
    public Optional<Theme> theme() {
        return store.homeSetting(THEME).flatMap(Theme::named);
    }

    /**
     * Sets the theme of the household, or the one that fits the terminal.
     *
     * @throws RecordsFailure if the file does not take it
     */
    public void setTheme(Optional<Theme> theme) {
        store.keepHomeSetting(THEME, theme.map(Theme::key).orElse(SYSTEM));
    }

    /**
     * Whether nothing moves at the end of a drill: the stones of the day are there at once.
     *
     * @throws RecordsFailure if it can't be read
     */
    public boolean isStill() {
        return store.homeSetting(MOTION).filter(STILL::equals).isPresent();
    }

    /**
     * Sets whether nothing moves.
     *
     * @throws RecordsFailure if the file does not take it
     */
    public void setStill(boolean still) {
        store.keepHomeSetting(MOTION, still ? STILL : "on");
    }

    /**
     * The folder into which printed pages go; empty for the person's documents.
     *
     * @throws RecordsFailure if it can't be read
     */
    public Optional<String> pagesFolder() {
        return store.homeSetting(PAGES).filter(set -> !set.equals(SYSTEM));
    }

    /**
     * Sets the folder into which printed pages go.
     *
     * @param folder empty for the person's documents
     * @throws RecordsFailure if the file does not take it
     */
    public void setPagesFolder(Optional<String> folder) {
        store.keepHomeSetting(PAGES, folder.orElse(SYSTEM));
    }

    /**
     * Whether a page that was made is shown in a browser at once.
     *
     * @throws RecordsFailure if it can't be read
     */
    public boolean showsPages() {
        return store.homeSetting(PAGES_SHOWN).filter(NO::equals).isEmpty();
    }

    /**
     * Sets whether a page that was made is shown in a browser at once.
     *
     * @throws RecordsFailure if the file does not take it
     */
    public void setShowsPages(boolean shown) {
        store.keepHomeSetting(PAGES_SHOWN, shown ? "yes" : NO);
    }

    /**
     * Whether the parent's pages say in sentences what they else draw.
     *
     * @throws RecordsFailure if it can't be read
     */
    public boolean isInSentences() {
        return store.homeSetting(PARENTS_PAGES).filter(SENTENCES::equals).isPresent();
    }

    /**
     * Sets whether they do.
     *
     * @throws RecordsFailure if the file does not take it
     */
    public void setInSentences(boolean sentences) {
        store.keepHomeSetting(PARENTS_PAGES, sentences ? SENTENCES : "drawn");
    }

    /** The window's size as it was last, with letters at least as large as the child who needs the largest. */
    public WindowSize window() {
        WindowSize last =
                store.homeSetting(WINDOW).flatMap(WindowSize::remembered).orElse(WindowSize.USUAL);
        int points = store.children().stream().mapToInt(this::letters).max().orElse(WindowSize.USUAL.points());
        return last.withPoints(Math.max(last.points(), points));
    }

    private int letters(Child child) {
        return Integer.parseInt(
                Steering.of(store.actions(child.id())).settings().value(Setting.LETTERS));
    }

    /** Remembers the size of the window. A failure is ignored. */
    public void rememberWindow(WindowSize size) {
        try {
            store.keepHomeSetting(WINDOW, size.written());
        } catch (RecordsFailure e) {
            // The window opens in its usual size next time; everything that counts was kept before.
        }
    }
}
