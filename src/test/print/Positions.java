// SPDX-License-Identifier: Apache-2.0
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where the words of a printed file stand, from what {@code pdftotext -bbox} says: {@code java Positions.java FILE
 * [backs]}. Prints what is wrong, and nothing if all is well: a word outside the margins, two words on top of each other,
 * and with {@code backs} an answer on an even page that does not lie behind its question on the page before, when the sheet
 * is turned over its long edge.
 */
final class Positions {
    /** What a printer leaves white at each edge; pages keep 12 mm, and rounding a little of it. */
    private static final double MARGIN = 33;

    /** How far a back may lie from the middle of its front: 2 mm. */
    private static final double BEHIND = 5.7;

    private record Word(String text, double left, double top, double right, double bottom) {
        double middle() {
            return (left + right) / 2;
        }

        double height() {
            return (top + bottom) / 2;
        }

        boolean covers(Word other) {
            double across = Math.min(right, other.right) - Math.max(left, other.left);
            double down = Math.min(bottom, other.bottom) - Math.max(top, other.top);
            return across > 1.5 && down > 0.4 * Math.min(bottom - top, other.bottom - other.top);
        }
    }

    private record Sheet(double width, double height, List<Word> words) {}

    public static void main(String[] arguments) throws Exception {
        List<Sheet> sheets = read(Files.readString(Path.of(arguments[0])));
        for (int i = 0; i < sheets.size(); i++) {
            inside(i + 1, sheets.get(i));
            if (arguments.length > 1 && i % 2 == 1) {
                behind(i + 1, sheets.get(i - 1), sheets.get(i));
            }
        }
    }

    private static List<Sheet> read(String xml) {
        List<Sheet> sheets = new ArrayList<>();
        Pattern page = Pattern.compile("<page width=\"([\\d.]+)\" height=\"([\\d.]+)\">(.*?)</page>", Pattern.DOTALL);
        Pattern word = Pattern.compile("<word xMin=\"([-\\d.]+)\" yMin=\"([-\\d.]+)\" xMax=\"([-\\d.]+)\""
                + " yMax=\"([-\\d.]+)\">(.*?)</word>");
        Matcher pages = page.matcher(xml);
        while (pages.find()) {
            List<Word> words = new ArrayList<>();
            Matcher found = word.matcher(pages.group(3));
            while (found.find()) {
                words.add(new Word(
                        found.group(5),
                        Double.parseDouble(found.group(1)),
                        Double.parseDouble(found.group(2)),
                        Double.parseDouble(found.group(3)),
                        Double.parseDouble(found.group(4))));
            }
            sheets.add(new Sheet(Double.parseDouble(pages.group(1)), Double.parseDouble(pages.group(2)), words));
        }
        return sheets;
    }

    private static void inside(int number, Sheet sheet) {
        for (Word word : sheet.words) {
            boolean in = word.left >= MARGIN
                    && word.top >= MARGIN - 6
                    && word.right <= sheet.width - MARGIN
                    && word.bottom <= sheet.height - MARGIN + 6;
            if (!in) {
                System.out.println("page " + number + ": outside the margins: " + word);
            }
        }
        for (int i = 0; i < sheet.words.size(); i++) {
            for (int j = i + 1; j < sheet.words.size(); j++) {
                if (sheet.words.get(i).covers(sheet.words.get(j))) {
                    System.out.println("page " + number + ": on each other: " + sheet.words.get(i) + " and "
                            + sheet.words.get(j));
                }
            }
        }
    }

    /** Questions are three words, number, sign, number; their middle is compared with the answer's, seen from behind. */
    private static void behind(int number, Sheet front, Sheet back) {
        int questions = 0;
        for (int i = 0; i + 2 < front.words.size(); i++) {
            Word left = front.words.get(i);
            String sign = front.words.get(i + 1).text;
            Word right = front.words.get(i + 2);
            boolean question = left.text.matches("\\d+") && sign.matches("[×÷·:]") && right.text.matches("\\d+");
            if (!question) {
                continue;
            }
            questions++;
            int a = Integer.parseInt(left.text);
            int b = Integer.parseInt(right.text);
            String answer = Integer.toString(sign.matches("[×·]") ? a * b : a / b);
            double middle = back.width - (left.left + right.right) / 2;
            boolean there = back.words.stream()
                    .anyMatch(w -> w.text.equals(answer)
                            && Math.abs(w.middle() - middle) < BEHIND
                            && Math.abs(w.height() - left.height()) < BEHIND);
            if (!there) {
                System.out.println("page " + number + ": not behind " + a + " " + sign + " " + b);
            }
        }
        if (questions == 0) {
            System.out.println("page " + number + ": no question in front");
        }
    }

    private Positions() {}
}
