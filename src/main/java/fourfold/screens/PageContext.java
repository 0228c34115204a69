package fourfold.screens;

import fourfold.home.Home;
import fourfold.words.Words;

/**
 * What every page has around it.
 *
 * @param home the home that is open
 * @param words the language of this home
 */
public record PageContext(Home home, Words words) {}
